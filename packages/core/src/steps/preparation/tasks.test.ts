import { describe, expect, test } from 'vitest';
import { catalogueOf, jobOf, prepare } from '../testing/small-job.ts';

describe('tasks', () => {
  test('a bare floor by the rates of the table (from memory): 50 m², 29 m of edge', () => {
    const { plan, hours } = prepare(jobOf());
    expect(plan.passes).toMatchObject({ value: 1, origin: 'assumed' });
    expect(plan.tasks.map(({ id }) => id)).toEqual(['grind/room', 'edge/room', 'vacuum/room']);
    expect(hours('grind')).toBeCloseTo(50 / 25, 9);
    expect(hours('edge')).toBeCloseTo(29 / 18, 9);
    expect(hours('vacuum')).toBeCloseTo(50 / 90, 9);
    for (const task of plan.tasks) expect(task.time.band?.[0]).toBeLessThan(task.time.value);
    expect(plan.tasks.at(-1)?.after).toEqual(['grind/room', 'edge/room']);
  });

  test('a film: removal, a second pass, edges through it; vacuum after each pass', () => {
    const { plan, hours } = prepare(
      jobOf((job) => {
        job.survey.onFloor = [{ id: 'film', what: 'old coating', since: 2016 }];
      }),
    );
    expect(plan.passes.value).toBe(2);
    expect(plan.tasks.map(({ work }) => work)).toEqual(['remove-film', 'second-pass', 'edge-through-film', 'vacuum']);
    expect(hours('remove-film')).toBeCloseTo(50 / 15, 9);
    expect(hours('second-pass')).toBeCloseTo(50 / 30, 9);
    expect(hours('edge-through-film')).toBeCloseTo(29 / 7.2, 9);
    expect(hours('vacuum')).toBeCloseTo(100 / 90, 9);
    expect(plan.tasks[1]?.after).toEqual(['remove-film/room']);
  });

  test('a film taken off by another method is timed by it, and by a patch of that method', () => {
    const blasted = (patch: boolean) =>
      prepare(
        jobOf((job) => {
          job.survey.onFloor = [{ id: 'film', what: 'old coating', since: 2016 }];
          if (job.options[0]) job.options[0].preparation = { method: 'grind', removal: 'shot-blast' };
          if (patch) {
            job.survey.testPatch = { on: '2026-06-08', method: 'shot-blast', area: '2 m²', time: '2 min' };
          }
        }),
      );
    expect(blasted(false).plan.tasks[0]?.work).toBe('shot-blast');
    expect(blasted(false).hours('shot-blast')).toBeCloseTo(50 / (900 * 0.09290304), 9);
    expect(blasted(true).hours('shot-blast')).toBeCloseTo(50 / 60, 9);
    expect(blasted(true).hours('second-pass')).toBeCloseTo(50 / 30, 9);
  });

  test('a lip at a crack is said', () => {
    const lipped = (step: string) =>
      prepare(
        jobOf((job) => {
          if (job.areas[0]) {
            job.areas[0].cracks = [
              {
                id: 'c',
                along: [
                  ['1 m', '1 m'],
                  ['2 m', '1 m'],
                ],
                widths: [],
                step,
              },
            ];
          }
        }),
      ).plan.notes.map(({ code }) => code);
    expect(lipped('1 mm')).toContain('preparation-crack-step');
    expect(lipped('0 mm')).not.toContain('preparation-crack-step');
  });

  test('a film on part of the floor: the rest is ground', () => {
    const { hours } = prepare(
      jobOf((job) => {
        job.survey.onFloor = [{ id: 'film', what: 'paint', since: 2016, extent: '20 m²' }];
      }),
    );
    expect(hours('remove-film')).toBeCloseTo(20 / 15, 9);
    expect(hours('grind')).toBeCloseTo(30 / 25, 9);
  });

  test('tile has no rate from memory: no hours are promised, and it is said what is missing', () => {
    const tiled = (own: boolean) =>
      prepare(
        jobOf((job) => {
          job.survey.onFloor = [{ id: 'tile', what: 'tile', since: 2016 }];
        }),
        catalogueOf((catalogue) => {
          if (own) catalogue.rates = [{ task: 'remove-tile', area: '5 m²/h' }];
        }),
      );
    const without = tiled(false);
    expect(without.hours('remove-tile')).toBeUndefined();
    expect(without.plan.missing).toContainEqual(
      expect.objectContaining({ path: 'catalogue.rates', meanwhile: 'held' }),
    );
    expect(tiled(true).hours('remove-tile')).toBeCloseTo(10, 9);
    expect(tiled(true).hours('grind')).toBeCloseTo(2, 9);
  });

  test.each([
    ['tile', 'remove-tile', 50],
    ['levelling coat', 'remove-levelling', 50],
    ['oil', 'oil-treat', 2],
  ] as const)('%s: missing without a rate; by the firm, and before it by a patch of this floor', (what, work, area) => {
    const with_ = (own: boolean, patches: readonly string[]) =>
      prepare(
        jobOf((job) => {
          const [room] = job.areas;
          if (what !== 'oil') job.survey.onFloor = [{ id: 'cover', what, since: 2016 }];
          else if (room) room.spots = [{ id: 'drip', kind: 'oil', at: ['2 m', '2 m'], area: '2 m²' }];
          job.survey.removalPatches = patches.map((time) => ({ what, on: '2026-06-05', area: '1 m²', time }));
        }),
        catalogueOf((catalogue) => {
          if (own) catalogue.rates = [{ task: work, area: '4 m²/h' }];
        }),
      );
    const none = with_(false, []);
    expect(none.hours(work)).toBeUndefined();
    expect(none.plan.missing.map(({ fact }) => fact.names?.work)).toContain(`@preparation-work-${work}`);
    expect(with_(true, []).hours(work)).toBeCloseTo(area / 4, 9);
    expect(with_(true, ['30 min']).hours(work)).toBeCloseTo(area / 2, 9);
    // Of two patches the later entry holds.
    expect(with_(false, ['30 min', '10 min']).hours(work)).toBeCloseTo(area / 6, 9);
    expect(with_(false, ['30 min']).plan.missing.map(({ fact }) => fact.names?.work)).not.toContain(
      `@preparation-work-${work}`,
    );
  });

  test('unknown covers: nothing is ground; unknown services: nothing is cut', () => {
    const cracked = (change: (job: Parameters<NonNullable<Parameters<typeof jobOf>[0]>>[0]) => void) =>
      prepare(
        jobOf((job) => {
          const [room] = job.areas;
          if (!room) throw new Error('no room');
          room.cracks = [
            {
              id: 'c',
              along: [
                ['1 m', '1 m'],
                ['4 m', '5 m'],
              ],
              widths: [],
              moves: 'no',
            },
          ];
          room.joints = [
            {
              id: 'j',
              kind: 'contraction',
              along: [
                ['5 m', '0 m'],
                ['5 m', '5 m'],
              ],
            },
            {
              id: 'i',
              kind: 'isolation',
              along: [
                ['0 m', '0 m'],
                ['10 m', '0 m'],
              ],
            },
          ];
          room.spots = [{ id: 'pit', kind: 'pit', at: ['2 m', '2 m'], area: '2 m²' }];
          change(job);
        }),
      );
    const known = cracked(() => {});
    expect(known.hours('crack-fill')).toBeCloseTo(5 / 9, 9);
    expect(known.hours('joint-fill')).toBeCloseTo(5 / 20, 9);
    expect(known.hours('patch')).toBeCloseTo(1, 9);
    const cables = cracked((job) => {
      delete job.survey.services;
    });
    expect(cables.plan.tasks.map(({ work }) => work)).toEqual(['grind', 'edge', 'patch', 'vacuum']);
    expect(cables.plan.notes.map(({ code }) => code)).toContain('preparation-cutting-held');
    const floor = cracked((job) => {
      delete job.survey.onFloor;
    });
    expect(floor.plan.tasks).toEqual([]);
    expect(floor.codes[0]).toBe('preparation-removal-held');
    const moving = cracked((job) => {
      const crack = job.areas[0]?.cracks?.[0];
      if (crack) crack.moves = 'yes';
    });
    expect(moving.hours('crack-fill')).toBeUndefined();
    expect(moving.plan.notes.map(({ code }) => code)).toContain('preparation-crack-moves');
  });

  test('stem walls only where a layer goes up them and the option keeps them', () => {
    const walled = (verticals: boolean, leaveOut?: string[]) =>
      prepare(
        jobOf((job) => {
          const [room] = job.areas;
          const [option] = job.options;
          if (!room || !option) throw new Error('incomplete');
          room.stemWalls = [{ id: 'stem', length: '15 m', height: '150 mm' }];
          if (leaveOut) option.leaveOut = leaveOut;
        }),
        catalogueOf((catalogue) => {
          const layer = catalogue.systems[0]?.layers[0];
          if (layer) layer.verticals = verticals;
        }),
      ).hours('stem-prep');
    expect(walled(true)).toBeCloseTo(1, 9);
    expect(walled(false)).toBeUndefined();
    expect(walled(true, ['stem'])).toBeUndefined();
  });

  test('the patch goes before the firm, the firm before the table; a whole task counts once', () => {
    const own = (patch: boolean, method = 'grind') =>
      prepare(
        jobOf((job) => {
          if (patch) job.survey.testPatch = { on: '2026-06-08', method, area: '2 m²', time: '10 min' };
        }),
        catalogueOf((catalogue) => {
          catalogue.rates = [
            { task: 'grind', area: { value: '20 m²/h', low: '15 m²/h', high: '25 m²/h' } },
            { task: 'edge', whole: '3 h' },
          ];
        }),
      );
    expect(own(true).hours('grind')).toBeCloseTo(50 / 12, 9);
    expect(own(false).hours('grind')).toBeCloseTo(50 / 20, 9);
    expect(own(true, 'scarify').hours('grind')).toBeCloseTo(50 / 20, 9);
    expect(own(false).hours('edge')).toBe(3);
  });

  test('preparation beyond one shift of the crew: dust settles overnight, the floor is vacuumed once more', () => {
    // Grind 50 / r, edge 29 / 18, one person: both sides of eight hours.
    const slow = (rate: string) =>
      prepare(
        jobOf((job) => {
          if (job.options[0]) job.options[0].people = 1;
        }),
        catalogueOf((catalogue) => {
          catalogue.rates = [{ task: 'grind', area: rate }];
        }),
      );
    expect(slow('7.9 m²/h').hours('vacuum')).toBeCloseTo(50 / 90, 9);
    const longer = slow('7.8 m²/h');
    expect(longer.hours('vacuum')).toBeCloseTo(100 / 90, 9);
    expect(longer.plan.notes.map(({ code }) => code)).toContain('preparation-vacuum-again');
  });

  test('oil that lets a drop in is done; other oil needs a rate, else its hours are said to be missing', () => {
    const oily = (waterDrop: 'soaks in' | 'stays' | undefined) =>
      prepare(
        jobOf((job) => {
          const [room] = job.areas;
          if (room) {
            room.spots = [
              { id: 'oil', kind: 'oil', at: ['2 m', '2 m'], area: '1 m²', ...(waterDrop ? { waterDrop } : {}) },
            ];
          }
        }),
      );
    expect(oily('soaks in').plan.missing.map(({ path }) => path)).not.toContain('catalogue.rates');
    expect(oily('soaks in').plan.gate.word).toBe('go');
    expect(oily('stays').plan.missing.map(({ path }) => path)).toContain('catalogue.rates');
    expect(oily('stays').codes).toContain('preparation-oil-drop-stays');
    expect(oily(undefined).codes).toContain('preparation-oil-not-tested');
  });
});
