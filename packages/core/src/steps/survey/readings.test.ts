import { describe, expect, test } from 'vitest';
import { jobOf, NOW, surveyOf } from '../testing/small-job.ts';

describe('pull-offs', () => {
  type Draft = NonNullable<Parameters<NonNullable<Parameters<typeof jobOf>[0]>>[0]['survey']['pullOffs']>[number];
  const pulled = (...pulls: readonly Partial<Draft>[]) =>
    surveyOf(
      jobOf((job) => {
        job.survey.pullOffs = pulls.map((pull, i) => ({
          id: `d${i}`,
          after: 'preparation' as const,
          mode: 'A' as const,
          ...pull,
        }));
      }),
    ).plan;

  test('averaged only within the mode that broke the concrete (C1583 5.4, READ): 2.0, 2.2 and glue 1.4 give 2.10', () => {
    const { pullOff, notes } = pulled({ stress: '2.0 MPa' }, { stress: '2.2 MPa' }, { stress: '1.4 MPa', mode: 'Y' });
    expect(pullOff?.mean.value).toBeCloseTo(2.1e6, 6);
    expect(pullOff?.mean.unit).toBe('Pa');
    expect(pullOff?.least.value).toBeCloseTo(2.0e6, 6);
    expect(pullOff?.counted.value).toBe(2);
    expect(notes.map(({ code }) => code)).toContain('survey-pull-off-glue');
  });

  // More than half the face in the glue: from memory of practice.
  test.each([
    ['50 %', 1],
    ['51 %', 0],
  ])('glue over %s of the face', (glueShare, counted) => {
    expect(pulled({ stress: '2 MPa', glueShare }).pullOff?.counted.value ?? 0).toBe(counted);
  });

  test('force and dolly give the stress: 3.0 kN on 50 mm is 1.53 MPa (own arithmetic)', () => {
    expect((pulled({ force: '3.0 kN', dolly: '50 mm' }).pullOff?.mean.value ?? 0) / 1e6).toBeCloseTo(1.53, 2);
  });

  test('as found, on a coating, without a value or elsewhere: kept, not counted', () => {
    const { pullOff, notes } = pulled(
      { stress: '2 MPa', after: 'as found' },
      { stress: '2 MPa', after: 'coating' },
      { force: '3 kN' },
      { stress: '2 MPa', mode: 'A/B' },
    );
    expect(pullOff).toBeUndefined();
    expect(notes.map(({ code }) => code).filter((code) => code.startsWith('survey-pull-off'))).toEqual([
      'survey-pull-off-not-after-preparation',
      'survey-pull-off-not-after-preparation',
      'survey-pull-off-no-value',
      'survey-pull-off-other-mode',
    ]);
  });
});

describe('climate', () => {
  test('a margin at each reading with a slab temperature; one pair of hand instruments for all', () => {
    const { plan, entries } = surveyOf(
      jobOf((job) => {
        // 16 °C, 71 %, surface 13 °C: a published chart gives a dew point of 11 °C and rejects it.
        job.survey.climate = [
          { at: '2026-06-10T08:00:00+00:00', air: '16 °C', humidity: '71 %', slab: '13 °C' },
          { at: '2026-06-10T09:00:00+00:00', air: '17 °C', humidity: '65 %' },
          { at: '2026-06-10T10:00:00+00:00', air: '20 °C', humidity: '50 %', slab: '18 °C' },
        ];
      }),
    );
    expect(plan.margins).toHaveLength(2);
    // Charts of whole degrees: 0.1 K is allowed beside the computed 10.7 and 2.3.
    expect(Math.abs((plan.margins[0]?.dewPoint.value ?? 0) - 10.7)).toBeLessThanOrEqual(0.1);
    expect(Math.abs((plan.margins[0]?.margin.value ?? 0) - 2.3)).toBeLessThanOrEqual(0.1);
    expect(plan.margins[0]?.margin.band).toBeDefined();
    expect(plan.margins[0]?.margin.inputs.airTemperatureError).toBe(plan.margins[1]?.margin.inputs.airTemperatureError);
    expect([...entries.keys()].filter((id) => id.includes('~'))).toEqual([]);
  });

  test('air alone says nothing of the slab: not known, held', () => {
    const { plan, codes } = surveyOf(
      jobOf((job) => {
        job.survey.climate = [{ at: '2026-06-10T09:00:00+00:00', air: '17 °C', humidity: '65 %' }];
      }),
    );
    expect(plan.margins).toEqual([]);
    expect(codes).toEqual(['survey-climate-not-read']);
    expect(plan.verdict.word).toBe('not known');
    expect(plan.missing).toContainEqual(expect.objectContaining({ path: 'survey.climate', meanwhile: 'held' }));
  });

  test('air without any moisture has no dew point: said, and the others stay', () => {
    const { plan } = surveyOf(
      jobOf((job) => {
        job.survey.climate?.push({ at: '2026-06-10T10:00:00+00:00', air: '20 °C', humidity: '0 %', slab: '18 °C' });
      }),
    );
    expect(plan.margins).toHaveLength(1);
    expect(plan.notes.map(({ code }) => code)).toContain('survey-climate-refused');
  });
});

describe('age of the slab', () => {
  const aged = (cast: string | undefined) =>
    surveyOf(
      jobOf((job) => {
        if (!job.survey.slab) throw new Error('no slab');
        if (cast === undefined) delete job.survey.slab.cast;
        else job.survey.slab.cast = cast;
      }),
    ).plan;

  test('whole days to today', () => {
    expect(aged('2026-05-13').slabAge?.value).toBe(28 * 86_400);
    expect(aged('2026-06-10').slabAge?.value).toBe(0);
  });

  test('unknown, or still ahead: no age, asked for; the system step holds where a sheet asks for one', () => {
    for (const cast of [undefined, '2026-06-11']) {
      const plan = aged(cast);
      expect(plan.slabAge).toBeUndefined();
      expect(plan.missing).toContainEqual(expect.objectContaining({ path: 'survey.slab.cast' }));
    }
  });
});

describe('what the crew meets', () => {
  test('a complete job misses only the test patch; nothing there is held', () => {
    const { plan } = surveyOf(jobOf());
    expect(plan.missing.map(({ path }) => path)).toEqual(['survey.testPatch']);
    expect(plan.missing.every(({ meanwhile }) => meanwhile === 'assumed')).toBe(true);
  });

  test('an empty survey still plans: every missing fact says what it changes', () => {
    const { plan } = surveyOf(
      jobOf((job) => {
        job.survey = {};
        job.options = [];
      }),
    );
    expect(plan.verdict.word).toBe('not known');
    expect(plan.areas).toHaveLength(1);
    for (const { fact, changes } of plan.missing) expect(changes.code).toBe(`${fact.code}-changes`);
    expect(plan.missing.filter(({ meanwhile }) => meanwhile === 'held').map(({ path }) => path)).toEqual([
      'survey.moisture.tests',
      'survey.onFloor',
      'survey.services.heatingPipes',
      'survey.services.tendons',
      'survey.services.cables',
      'survey.services.drains',
      'survey.climate',
    ]);
  });

  test('a room not emptied, ponding and a feathered door edge are cautions', () => {
    const { codes, plan } = surveyOf(
      jobOf((job) => {
        if (job.survey.building) job.survey.building.roomEmptied = 'no';
        const [room] = job.areas;
        if (!room?.exits?.[0]) throw new Error('no room');
        room.exits[0].outside = true;
        room.doorEdge = 'feathered';
        room.spots = [{ id: 'pond', kind: 'ponding', at: ['1 m', '1 m'], area: '1 m²' }];
      }),
    );
    expect(codes).toEqual(['survey-room-not-emptied', 'survey-door-edge-feathered', 'survey-ponding']);
    expect(plan.verdict.word).toBe('caution');
  });
});

describe('open time by own test', () => {
  const tried = (ties: readonly (readonly [string, boolean])[]) =>
    surveyOf(
      jobOf((job) => {
        job.survey.openTimeTests = [
          {
            product: 'resin',
            on: NOW,
            slab: '20 °C',
            ties: ties.map(([after, vanished]) => ({ after, vanished })),
          },
        ];
      }),
    );

  test.each([
    [
      [
        ['3 min', true],
        ['5 min', true],
        ['8 min', false],
      ],
      'survey-open-time',
      300,
    ],
    [
      [
        ['8 min', true],
        ['3 min', true],
      ],
      'survey-open-time-at-least',
      480,
    ],
    [
      [
        ['3 min', true],
        ['5 min', false],
        ['8 min', true],
      ],
      'survey-open-time',
      180,
    ],
    [[['3 min', false]], 'survey-open-time-below', 180],
  ] as const)('%j', (ties, code, seconds) => {
    const { plan, entries } = tried(ties);
    const said = plan.notes.find((note) => note.code.startsWith('survey-open-time'));
    expect(said?.code).toBe(code);
    const entry = entries.get(said?.figures?.time ?? said?.figures?.first ?? '');
    expect(entry).toMatchObject({ value: seconds, origin: 'own test' });
  });
});

test('a patch that glazed or wore the tool says so; normal wear says nothing', () => {
  const said = (wear: 'normal' | 'glazed' | 'fast') =>
    surveyOf(
      jobOf((job) => {
        job.survey.testPatch = { on: '2026-06-08', method: 'grind', area: '1 m²', time: '3 min', wear };
      }),
    ).plan.notes.map(({ code }) => code);
  expect(said('glazed')).toContain('survey-patch-wear-glazed');
  expect(said('fast')).toContain('survey-patch-wear-fast');
  expect(said('normal').some((code) => code.startsWith('survey-patch'))).toBe(false);
});
