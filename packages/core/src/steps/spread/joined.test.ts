import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { catalogueFrom } from '../../catalogue.ts';
import { jobFrom } from '../../job.ts';
import type { Result } from '../../kernel/issue.ts';
import { answered, type Plan, plan } from '../../plan.ts';
import { checkJob } from '../check/job.ts';
import type { SpreadSeen } from './index.ts';

// biome-ignore lint/suspicious/noExplicitAny: the files are changed on purpose
type Change = (job: any) => void;

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

const file = (name: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../../../../jobs/garage/${name}.json`, import.meta.url), 'utf8'));

/** The garage with a workshop room behind its house door, measured from a corner of its own and lying on its side. */
function withWorkshop(
  change: Change = () => undefined,
  wall: string | null = null,
): { plan: Plan; seen: SpreadSeen[] } {
  // biome-ignore lint/suspicious/noExplicitAny: read from a file and changed
  const draft = file('job') as any;
  draft.areas[0].exits[1].shut = false;
  draft.areas.push({
    id: 'den',
    name: 'Workshop room',
    outline: [
      ['0 ft', '0 ft'],
      ['10 ft', '0 ft'],
      ['10 ft', '12 ft'],
      ['0 ft', '12 ft'],
    ],
  });
  for (const option of draft.options) option.areas = ['main', 'den'];
  draft.doors = [
    {
      id: 'den-door',
      name: 'workshop door',
      sides: [
        { area: 'main', from: ['20 ft', '14 ft'], to: ['20 ft', '17 ft'] },
        { area: 'den', from: ['5 ft', '0 ft'], to: ['8 ft', '0 ft'] },
      ],
      ...(wall ? { wall } : {}),
    },
  ];
  change(draft);
  const job = must(jobFrom(draft));
  const catalogue = must(catalogueFrom(file('catalogue')));
  expect(checkJob(job, catalogue)).toEqual([]);
  const seen: SpreadSeen[] = [];
  const made = plan({
    job: { ...job, options: job.options.slice(0, 1) },
    catalogue,
    now: '2026-05-12T18:00:00-06:00',
    spread: 60,
    onSpread: (one) => seen.push(one),
  });
  return { plan: made, seen };
}

function coatsOf({ options, entries }: Plan) {
  const spread = options[0]?.spread;
  if (!spread || !answered(spread)) throw new Error('no spread');
  const value = (id: string | undefined): number => {
    const entry = id === undefined ? undefined : entries[id];
    if (!entry || !('value' in entry)) throw new Error(`no value for ${id}`);
    return entry.value;
  };
  return { ...spread, value };
}

// 20 × 21 ft, a nook of 5 × 3 ft and a room of 10 × 12 ft (own arithmetic).
const FLOOR = (435 + 120) * 0.3048 ** 2;

describe('two rooms joined by a door', () => {
  const { plan: made, seen } = withWorkshop();
  const { coats, value } = coatsOf(made);

  test('are one floor to every coat, and each coat is planned', () => {
    expect(coats.map(({ layer, state, areas }) => `${layer} ${state} ${areas.join('+')}`)).toEqual([
      'base planned main+den',
      'clear planned main+den',
    ]);
  });

  test('the pours cover both floors once', () => {
    for (const { pours } of coats) {
      expect(pours.reduce((sum, pour) => sum + value(pour.area), 0)).toBeCloseTo(FLOOR, 3);
    }
  });

  test('the room without a way out of its own is done before the last pour, which leaves by the overhead door', () => {
    for (const { pours, wayOut } of coats) {
      expect(pours.at(-1)?.areas).toEqual(['main']);
      expect(pours.at(-1)?.ends).toEqual({ code: 'spread-end-way-out', names: { door: 'overhead door' } });
      expect(wayOut).toEqual(['overhead door']);
    }
  });

  test('places inside the room are measured from its own doorway', () => {
    const inside = coats.flatMap(({ pours }) => pours).filter(({ areas }) => areas.join() === 'den');
    expect(inside.length).toBeGreaterThan(0);
    for (const { ends } of inside) {
      if (ends.code !== 'spread-end-way-out') expect(ends.names?.door).toBe('workshop door');
    }
  });

  test('the threshold is a line where the film may end; nobody walks through the wall', () => {
    for (const { question, result } of seen) {
      expect(question.stopLines.map(({ kind }) => kind)).toContain('threshold');
      if (result.kind !== 'plan') throw new Error('no plan');
      const { link, x, count } = result.problem.squares;
      const across = Array.from({ length: count }, (_, s) => s).filter((s) => {
        const east = link[4 * s] as number;
        return east >= 0 && (x[s] as number) < 20 * 0.3048 && (x[east] as number) > 20 * 0.3048;
      });
      // 3 ft of doorway, squares of half a metre: one or two rows pass through
      expect(across.length).toBeGreaterThan(0);
      expect(across.length).toBeLessThanOrEqual(2);
    }
  });

  test('the room lies where its door puts it', () => {
    const den = coats[0]?.joined?.rooms[1];
    const xs = (den?.outline ?? []).map(([x]) => x / 0.3048);
    const ys = (den?.outline ?? []).map(([, y]) => y / 0.3048);
    // its 12 ft run on from the right wall; its door 14 to 17 ft up is 5 to 8 ft along its own wall
    expect([Math.min(...xs), Math.max(...xs)].map((v) => Math.round(v * 100) / 100)).toEqual([20, 32]);
    expect([Math.min(...ys), Math.max(...ys)].map((v) => Math.round(v * 100) / 100)).toEqual([12, 22]);
  });

  test('the same answer twice', () => {
    expect(JSON.stringify(withWorkshop().plan)).toBe(JSON.stringify(made));
  });
});

test('the floor in the doorway of a thick wall is told, for no area counts it', () => {
  const { plan: made } = withWorkshop(() => undefined, '6 in');
  const { coats, notes, value } = coatsOf(made);
  const told = notes.find(({ code }) => code === 'spread-doorway-floor');
  const doorway = 3 * 0.5 * 0.3048 ** 2;
  expect(value(told?.figures?.area)).toBeCloseTo(doorway, 9);
  for (const { pours } of coats) {
    expect(pours.reduce((sum, pour) => sum + value(pour.area), 0)).toBeCloseTo(FLOOR + doorway, 3);
  }
});

test('a door kept shut leaves two floors, one after the other; the one behind it has no way out', () => {
  const { plan: made } = withWorkshop((job) => {
    job.doors[0].shut = true;
  });
  const { coats, verdict } = coatsOf(made);
  expect(coats.map(({ areas }) => areas.join('+'))).toEqual(['main', 'den', 'main', 'den']);
  expect(coats.every(({ joined }) => joined === undefined)).toBe(true);
  expect(verdict.reasons.map(({ code }) => code)).toContain('spread-no-way-out');
});

test('a room that is left as it is can be walked into: its door is a way out', () => {
  const { plan: made } = withWorkshop((job) => {
    job.areas[0].exits = [];
    for (const option of job.options) option.areas = ['main'];
  });
  const { coats } = coatsOf(made);
  expect(coats.map(({ areas, wayOut }) => `${areas.join('+')} by ${wayOut.join()}`)).toEqual([
    'main by workshop door',
    'main by workshop door',
  ]);
});

test('a way out drawn where the doorway is counts once', () => {
  const { plan: made } = withWorkshop((job) => {
    job.areas[1].exits = [{ id: 'twice', from: ['5 ft', '0 ft'], to: ['8 ft', '0 ft'] }];
  });
  const exits = coatsOf(made).coats[0]?.joined?.exits.map(({ name }) => name);
  expect(exits).toEqual(['overhead door']);
});
