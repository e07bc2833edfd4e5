import { describe, expect, test } from 'vitest';
import { catalogueOf, jobOf, prepare } from '../testing/small-job.ts';
import { bondsFor } from './tooling.ts';

// Bands as read on a trade page; between them either neighbour.
test.each([
  [1.5, []],
  [2, ['extremely-hard']],
  [3, ['extremely-hard']],
  [3.5, ['extremely-hard', 'hard']],
  [4, ['hard']],
  [5.5, ['hard', 'soft']],
  [6, ['soft']],
  [9, ['extremely-soft']],
  [9.5, []],
])('bond for scratch hardness %s', (scratch, bonds) => {
  expect(bondsFor(scratch)).toEqual(bonds);
});

describe('power and dust', () => {
  const tool = (change: Record<string, unknown>, power?: { phases: number; voltage: string; current: string }) =>
    prepare(
      jobOf((job) => {
        if (!job.survey.building) throw new Error('no building');
        if (power) job.survey.building.power = power;
        else delete job.survey.building.power;
      }),
      catalogueOf((catalogue) => {
        catalogue.tools = [
          { id: 'g', name: 'grinder', method: 'grind', power: '4 kW', phases: 1, voltage: '230 V', ...change },
        ];
      }),
    ).plan.tooling.map(({ code }) => code);
  const single = (current: string) => ({ phases: 1, voltage: '230 V', current });

  test.each([
    // 4,000 W / (230 V × 0.9 × 0.9) = 21.47 A, a quarter more is 26.84 A (own arithmetic).
    ['enough', single('26.9 A'), {}, 'preparation-power-at-or-below'],
    ['not enough', single('26.8 A'), {}, 'preparation-power-above'],
    ['three phases wanted', single('32 A'), { phases: 3, voltage: '400 V' }, 'preparation-power-phases'],
    ['another voltage', { phases: 1, voltage: '120 V', current: '20 A' }, {}, 'preparation-power-other-voltage'],
    ['not known', undefined, {}, 'preparation-power-not-known'],
  ] as const)('supply: %s', (_, supply, change, code) => {
    expect(tool({ powerFactor: 0.9, efficiency: 0.9, ...change }, supply)).toContain(code);
  });

  const dusty = (airflow?: string) =>
    prepare(
      jobOf(),
      catalogueOf((catalogue) => {
        catalogue.tools = [{ id: 'e', name: 'edger', method: 'grind', wheel: '7 in', ...(airflow ? { airflow } : {}) }];
      }),
    ).plan.dust.map(({ code }) => code);

  // 25 cfm per inch: a 7 in wheel comes to 175 cfm, READ.
  test.each([
    ['175 cfm', 'preparation-dust-airflow-reaches'],
    ['174.9 cfm', 'preparation-dust-airflow-below'],
    [undefined, 'preparation-dust-airflow-not-known'],
  ])('shroud with %s', (airflow, code) => {
    expect(dusty(airflow)).toContain(code);
  });

  test('no task, no dust; no figure of safety becomes a reason against or for the plan', () => {
    const held = prepare(
      jobOf((job) => {
        delete job.survey.onFloor;
      }),
    );
    expect(held.plan.dust).toEqual([]);
    expect(dusty('1 cfm')).toContain('preparation-dust-respirator-own-entry');
    expect(prepare(jobOf()).plan.verdict.word).toBe('go');
  });
});
