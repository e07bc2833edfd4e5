import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { planSpread, readInstance, readSolution, type SpreadCase } from './index.ts';

const file = JSON.parse(readFileSync(new URL('../../../../reference/spread/garage-6x6.json', import.meta.url), 'utf8'));
const read = readInstance(file);
if (!read.ok) throw new Error('unreadable garage');
const garage: SpreadCase = read.value;

function issues(question: SpreadCase) {
  const result = planSpread(question, { areas: 'clipped', seed: 1 });
  return result.kind === 'issues' ? result.issues : [];
}

describe('bad input is named with field, value and limits', () => {
  it('an exit in the middle of the floor', () => {
    const exits = [{ a: [2.5, 3] as const, b: [3.5, 3] as const, outside: true }];
    expect(issues({ ...garage, exits })).toEqual([
      { code: 'spread/exit-inside-floor', path: 'exits.0', value: 3, limits: { high: 0.5, unit: 'm' } },
    ]);
  });
  it('an exit away from the floor', () => {
    const exits = [{ a: [2, -4] as const, b: [3, -4] as const, outside: true }];
    expect(issues({ ...garage, exits })[0]).toMatchObject({ code: 'spread/exit-off-floor', path: 'exits.0', value: 4 });
  });
  it('no exit', () => {
    expect(issues({ ...garage, exits: [], mixAt: { point: [3, 3] } })).toEqual([
      { code: 'spread/no-exit', path: 'exits', value: 0, limits: { low: 1 } },
    ]);
  });
  it('an exit narrower than a person', () => {
    const exits = [{ a: [2, 0] as const, b: [2.3, 0] as const, outside: true }];
    const [issue] = issues({ ...garage, exits });
    expect(issue).toMatchObject({ code: 'spread/exit-too-narrow', path: 'exits.0', limits: { low: 0.45, unit: 'm' } });
    expect(issue?.value).toBeCloseTo(0.3, 9);
  });
  it('two floors that are not joined', () => {
    const walls = [
      [
        [3, 0],
        [3, 6],
      ],
    ] as const;
    const exits = [{ a: [0.5, 0] as const, b: [1.5, 0] as const, outside: true }];
    const [issue] = issues({ ...garage, walls, exits });
    expect(issue).toMatchObject({ code: 'spread/floors-not-joined', path: 'exits' });
    expect(issue?.value).toBeCloseTo(18, 9);
  });
  it('a passage narrower than a shoulder, but not one wide enough', () => {
    const exits = [{ a: [0.5, 0] as const, b: [1.5, 0] as const, outside: true }];
    const gap = (width: number) =>
      [
        [
          [3, 0],
          [3, 3.25 - width / 2],
        ],
        [
          [3, 3.25 + width / 2],
          [3, 6],
        ],
      ] as const;
    const [issue] = issues({ ...garage, exits, walls: gap(0.3) });
    expect(issue).toMatchObject({ code: 'spread/passage-too-narrow', path: 'walls', limits: { low: 0.45 } });
    // the room behind, less the one square that is reached into
    expect(issue?.value).toBeCloseTo(18 - 0.25, 9);
    expect(issues({ ...garage, exits, walls: gap(0.5) })).toEqual([]);
  });
  it('a million squares, with the smallest lane that would do', () => {
    const [issue] = issues({
      ...garage,
      outline: [
        [0, 0],
        [500, 0],
        [500, 500],
        [0, 500],
      ],
    });
    expect(issue).toEqual({
      code: 'spread/too-many-squares',
      path: 'cellM',
      value: 1_000_000,
      limits: { high: 500_000, lowestLane: 0.71 },
    });
  });
  it.each(['rateM2PerMinPerPerson', 'walkMPerMin', 'people', 'laneM'] as const)('%s of zero', (field) => {
    const found = issues({ ...garage, crew: { ...garage.crew, [field]: 0 } });
    expect(found[0]).toMatchObject({ code: 'spread/out-of-range', path: `crew.${field}`, value: 0 });
  });
  it('a rate that is no number', () => {
    const found = issues({ ...garage, crew: { ...garage.crew, rateM2PerMinPerPerson: Number.NaN } });
    expect(found[0]).toMatchObject({ code: 'spread/out-of-range', path: 'crew.rateM2PerMinPerPerson' });
  });
  it('a batch of nothing', () => {
    const [issue] = issues({ ...garage, batch: { ...garage.batch, litres: 0 } });
    expect(issue).toEqual({
      code: 'spread/out-of-range',
      path: 'batch.litres',
      value: 0,
      limits: { low: 0.2, high: 2000, unit: 'L' },
    });
  });
  it('nobody left to spread: two people, one mixing and one broadcasting', () => {
    const [issue] = issues({ ...garage, crew: { ...garage.crew, people: 2, broadcasters: 1 } });
    expect(issue).toEqual({ code: 'spread/nobody-spreads', path: 'crew.people', value: 2, limits: { low: 3 } });
  });
  it('times of the day out of order', () => {
    const openMin = [
      [720, 14],
      [480, 20],
    ] as const;
    const [issue] = issues({ ...garage, clock: { ...garage.clock, openMin } });
    expect(issue).toMatchObject({
      code: 'spread/table-not-rising',
      path: 'clock.openMin.1.0',
      value: 480,
      limits: { above: 720 },
    });
  });
  it('an outline without area', () => {
    expect(
      issues({
        ...garage,
        outline: [
          [0, 0],
          [1, 1],
          [2, 2],
        ],
      })[0],
    ).toMatchObject({ code: 'spread/no-area', path: 'outline' });
  });
  it('a floor smaller than a lane', () => {
    const outline = [
      [0, 0],
      [0.2, 0],
      [0.2, 6],
      [0, 6],
    ] as const;
    const exits = [{ a: [0, 1] as const, b: [0, 2] as const, outside: true }];
    expect(issues({ ...garage, outline, exits })[0]).toMatchObject({
      code: 'spread/floor-smaller-than-lane',
      path: 'outline',
    });
  });
  it('a mixing station off the floor, or one whose way does not fit into the last pour', () => {
    expect(issues({ ...garage, mixAt: { point: [9, 9] } })[0]).toMatchObject({ code: 'spread/station-off-floor' });
    const tight = { ...garage, batch: { ...garage.batch, litres: 5.39 }, mixAt: { point: [3, 5.75] as const } };
    expect(issues(tight)[0]).toMatchObject({
      code: 'spread/station-too-deep',
      path: 'mixAt.point',
      limits: { unit: 'L' },
    });
  });
});

describe('files that are no instance', () => {
  it('names the field', () => {
    const damaged = structuredClone(file);
    damaged.instance.crew.people = 'two';
    const result = readInstance(damaged);
    expect(result.ok).toBe(false);
    if (!result.ok)
      expect(result.issues).toEqual([
        { code: 'spread/not-an-instance', path: 'crew.people', value: 'two', limits: { expected: 'number' } },
      ]);
  });
  it.each([undefined, null, 3, 'x', [], {}])('%j is refused', (json) => {
    expect(readInstance(json).ok).toBe(false);
    expect(readSolution(json).ok).toBe(false);
  });
  it('odd cells', () => {
    const solution = { format: 'spread-solution-1', instance: 'x', pours: [{ pour: 1, cells: [0, 0, 1] }] };
    const result = readSolution(solution);
    expect(result.ok).toBe(false);
    if (!result.ok)
      expect(result.issues[0]).toMatchObject({ code: 'spread/cells-not-pairs', path: 'pours.0.cells', value: 3 });
  });
});
