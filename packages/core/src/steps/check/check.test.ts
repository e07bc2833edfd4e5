import { describe, expect, test } from 'vitest';
import { catalogueOf, jobOf, NOW } from '../testing/small-job.ts';
import { checkJob, WARNINGS } from './job.ts';
import { nearestId } from './near.ts';
import { likelyMeaning } from './outline-sense.ts';

type Draft = Parameters<NonNullable<Parameters<typeof jobOf>[0]>>[0];
const issues = (change: (job: Draft) => void) => checkJob(jobOf(change), catalogueOf(), NOW);
const codes = (change: (job: Draft) => void) => issues(change).map(({ code }) => code);

const outline =
  (...corners: readonly (readonly [string, string])[]) =>
  (job: Draft) => {
    const [room] = job.areas;
    if (!room) throw new Error('no room');
    room.outline = corners.map(([x, y]) => [x, y]);
    delete room.exits;
  };
const rectangle = (width: string, depth: string) =>
  outline(['0 m', '0 m'], [width, '0 m'], [width, depth], ['0 m', depth]);
const square = (x: number, y: number, side: number): [string, string][] => [
  [`${x} m`, `${y} m`],
  [`${x + side} m`, `${y} m`],
  [`${x + side} m`, `${y + side} m`],
  [`${x} m`, `${y + side} m`],
];

test('a sound job has no issue, with or without options', () => {
  expect(issues(() => {})).toEqual([]);
  expect(
    issues((job) => {
      job.options = [];
    }),
  ).toEqual([]);
});

describe('the size of a room', () => {
  test('12 m typed as 12 in: the value, the range and the likely meaning', () => {
    const [issue, ...rest] = issues(rectangle('12 in', '10 m'));
    expect(rest).toEqual([]);
    expect(issue).toMatchObject({
      code: 'check-room-size-unit',
      path: ['areas', 0, 'outline', 1, 0],
      value: '12 in',
      names: { likely: '12 ft / 12 m' },
    });
    expect(issue?.limits).toHaveLength(2);
  });

  test.each([
    ['0.6 m', []],
    ['0.59 m', ['check-room-size']],
    ['500 m', []],
    ['501 m', ['check-room-size-unit']],
  ])('a side of %s', (side, expected) => {
    // 0.59 m in feet or centimetres is no room either, so nothing is suggested.
    expect(codes(rectangle(side, '10 m')).map((code) => code)).toEqual(expected);
  });

  test.each([
    ['500 m', '100 m', []],
    ['500 m', '100.1 m', ['check-room-area']],
    ['0.7 m', '0.8 m', []],
    ['0.7 m', '0.7 m', ['check-room-area']],
  ])('%s × %s', (width, depth, expected) => {
    expect(codes(rectangle(width, depth))).toEqual(expected);
  });

  test.each([
    ['12 in', ['12 ft', '12 m']],
    ['12"', ['12 ft', '12 m']],
    ['3.2 mm', ['3.2 m']],
    ['600 cm', []],
    ['650 m', ['650 ft', '650 cm']],
    ['1/2 in', []],
    ['12 ft 6 in', []],
  ])('%s likely meant %j', (typed, likely) => {
    expect(likelyMeaning(typed)).toEqual(likely);
  });
});

describe('the drawing', () => {
  test('an outline that crosses itself names both walls', () => {
    const [issue] = issues(outline(['0 m', '0 m'], ['4 m', '4 m'], ['4 m', '0 m'], ['0 m', '4 m']));
    expect(issue).toMatchObject({ code: 'check-outline-crosses', names: { first: '1–2', second: '3–4' } });
  });

  test('the same corner twice is no wall', () => {
    expect(codes(outline(['0 m', '0 m'], ['4 m', '0 m'], ['4 m', '0 m'], ['0 m', '4 m']))).toEqual([
      'check-corner-twice',
    ]);
  });

  test('neither outline nor tape', () => {
    expect(
      codes((job) => {
        delete job.areas[0]?.outline;
      }),
    ).toContain('check-area-without-shape');
  });

  const holed =
    (...holes: readonly [string, string][][]) =>
    (job: Draft): void => {
      const [room] = job.areas;
      if (room) room.holes = holes.map((ring, i) => ({ id: `h${i}`, outline: ring }));
    };

  test.each([
    ['inside', [square(1, 1, 1)], []],
    ['touching the wall', [square(0, 1, 1)], ['check-hole-outside']],
    ['over the wall', [square(9.5, 1, 1)], ['check-hole-outside']],
    ['outside', [square(20, 1, 1)], ['check-hole-outside']],
    ['apart', [square(1, 1, 1), square(2.1, 1, 1)], []],
    ['touching', [square(1, 1, 1), square(2, 1, 1)], ['check-holes-overlap']],
    ['one in the other', [square(1, 1, 3), square(2, 2, 1)], ['check-holes-overlap']],
  ] as const)('holes %s', (_, holes, expected) => {
    expect(codes(holed(...(holes as readonly [string, string][][])))).toEqual(expected);
  });

  test.each([
    ['0.05 m', []],
    ['0.06 m', ['exit-off-the-wall', 'exit-off-the-wall']],
  ])('an exit %s off the wall warns', (y, expected) => {
    const found = issues((job) => {
      const exit = job.areas[0]?.exits?.[0];
      if (!exit) throw new Error('no exit');
      exit.from = ['4 m', y];
      exit.to = ['5 m', y];
    });
    expect(found.map(({ code }) => code)).toEqual(expected);
    for (const { code } of found) expect(WARNINGS.has(code)).toBe(true);
  });

  test('an exit of no width', () => {
    expect(
      codes((job) => {
        const exit = job.areas[0]?.exits?.[0];
        if (exit) exit.to = exit.from;
      }),
    ).toEqual(['check-exit-without-width']);
  });

  test('what is drawn off the floor is named with its distance', () => {
    const found = issues((job) => {
      const [room] = job.areas;
      if (!room) throw new Error('no room');
      room.points = [{ id: 'p', at: ['11 m', '1 m'] }];
      room.cracks = [
        {
          id: 'c',
          along: [
            ['1 m', '1 m'],
            ['1 m', '5.04 m'],
          ],
          widths: [],
        },
      ];
    });
    expect(found.map(({ code, names }) => [code, names?.id])).toEqual([['check-off-the-floor', 'p']]);
  });

  test('a taped room: corners named once, measures between two known ones', () => {
    expect(
      codes((job) => {
        const measures = [
          { from: 'a', to: 'b', length: '4 m' },
          { from: 'b', to: 'x', length: '4 m' },
          { from: 'c', to: 'c', length: '4 m' },
        ];
        job.areas = [
          { id: 'room', name: 'Room', tape: { corners: ['a', 'b', 'c', 'a'], measures, rightAngles: ['q'] } },
        ];
      }),
    ).toEqual(['check-id-twice', 'check-corner-unknown', 'check-measure-to-itself', 'check-corner-unknown']);
  });
});

describe('ids', () => {
  test('the second of two equal ids is the one named', () => {
    const found = issues((job) => {
      const [room] = job.areas;
      if (room) job.areas.push({ ...room });
    });
    expect(found).toMatchObject([{ code: 'check-id-twice', path: ['areas', 1, 'id'], value: 'room' }]);
  });

  test.each([
    [
      'system',
      (job: Draft) => {
        if (job.options[0]) job.options[0].system = 'two-cout';
      },
      { code: 'check-system-unknown', path: ['options', 0, 'system'], names: { suggestion: 'two-coat' } },
    ],
    [
      'area',
      (job: Draft) => {
        if (job.options[0]) job.options[0].areas = ['rom'];
      },
      { code: 'check-area-unknown', path: ['options', 0, 'areas', 0], names: { suggestion: 'room' } },
    ],
    [
      'layer of a start',
      (job: Draft) => {
        if (job.options[0]) job.options[0].starts = [{ layer: 'basse', at: NOW }];
      },
      { code: 'check-layer-unknown', path: ['options', 0, 'starts', 0, 'layer'], names: { suggestion: 'base' } },
    ],
    [
      'layer of thinner',
      (job: Draft) => {
        if (job.options[0]) job.options[0].thinner = [{ layer: 'tip', ratio: '5 %' }];
      },
      { code: 'check-layer-unknown', path: ['options', 0, 'thinner', 0, 'layer'], names: { suggestion: 'top' } },
    ],
    [
      'method',
      (job: Draft) => {
        if (job.options[0]) job.options[0].preparation = { method: 'grnd' };
      },
      { code: 'check-method-unknown', path: ['options', 0, 'preparation', 'method'], names: { suggestion: 'grind' } },
    ],
    [
      'removal',
      (job: Draft) => {
        if (job.options[0]) job.options[0].preparation = { removal: 'scarfy' };
      },
      {
        code: 'check-method-unknown',
        path: ['options', 0, 'preparation', 'removal'],
        names: { suggestion: 'scarify' },
      },
    ],
    [
      'vertical left out',
      (job: Draft) => {
        if (job.options[0]) job.options[0].leaveOut = ['stem'];
      },
      { code: 'check-vertical-unknown', path: ['options', 0, 'leaveOut', 0], names: { suggestion: '' } },
    ],
    [
      'area of a cover',
      (job: Draft) => {
        job.survey.onFloor = [{ id: 'c', what: 'tile', areas: ['hall'] }];
      },
      { code: 'check-area-unknown', path: ['survey', 'onFloor', 0, 'areas', 0] },
    ],
    [
      'product of an open time test',
      (job: Draft) => {
        job.survey.openTimeTests = [
          { product: 'rasin', on: '2026-06-01', slab: '20 °C', ties: [{ after: '3 min', vanished: true }] },
        ];
      },
      { code: 'check-product-unknown', names: { suggestion: 'resin' } },
    ],
    [
      'tool of the test patch',
      (job: Draft) => {
        job.survey.testPatch = { on: '2026-06-01', method: 'grind', tool: 'grindr', area: '1 m²', time: '5 min' };
      },
      { code: 'check-tool-unknown', path: ['survey', 'testPatch', 'tool'], names: { suggestion: 'grinder' } },
    ],
  ] as const)('an unknown %s, with the nearest', (_, change, expected) => {
    expect(issues(change)).toMatchObject([expected]);
  });

  test('an area twice in one option, and two options accepted', () => {
    expect(
      codes((job) => {
        const [option] = job.options;
        if (!option) throw new Error('no option');
        option.areas = ['room', 'room'];
        option.accepted = true;
        job.options.push({ ...option, id: 'two', areas: ['room'] });
      }),
    ).toEqual(['check-two-accepted', 'check-id-twice']);
  });

  test('a system that names a product the catalogue lost is said at the option', () => {
    const catalogue = catalogueOf((draft) => {
      if (draft.products[0]) draft.products[0].id = 'resine';
    });
    expect(checkJob(jobOf(), catalogue, NOW)[0]).toMatchObject({
      code: 'check-product-unknown',
      path: ['options', 0, 'system'],
      value: 'resin',
      names: { suggestion: 'resine', system: 'two-coat' },
    });
  });

  test('the nearest of several, the first of equals, nothing of none', () => {
    expect(nearestId('halll', ['wall', 'hall', 'hull'])).toBe('hall');
    expect(nearestId('x', ['a', 'b'])).toBe('a');
    expect(nearestId('x', [])).toBe('');
  });
});

describe('readings', () => {
  test('a pull-off needs a stress, or force and dolly', () => {
    const pull = (value: { stress?: string; force?: string; dolly?: string }) =>
      codes((job) => {
        job.survey.pullOffs = [{ id: 'd', after: 'preparation', mode: 'A', ...value }];
      });
    expect(pull({})).toEqual(['pull-off-without-a-value']);
    expect(pull({ force: '3 kN' })).toEqual(['pull-off-without-a-value']);
    expect(pull({ force: '3 kN', dolly: '50 mm' })).toEqual([]);
    expect(pull({ stress: '2 MPa' })).toEqual([]);
  });

  test.each([
    ['ASTM F2170', { emission: '3 lb/1000 ft²·24 h' }, { humidity: '75 %' }],
    ['BS 8203 hood', { content: '3 %' }, { humidity: '75 %' }],
    ['ASTM F1869', { massGain: '3 g', dishArea: '0.04 m²' }, { emission: '3 lb/1000 ft²·24 h' }],
    ['ASTM F1869', { humidity: '75 %' }, { massGain: '3 g', dishArea: '0.04 m²', wait: '66 h' }],
    ['carbide', { humidity: '75 %' }, { content: '3 %' }],
    ['ASTM D4263', { humidity: '75 %' }, { sheet: 'dry' }],
    ['meter', { sheet: 'dry' }, { content: '3 %' }],
  ] as const)('%s needs the number it gives', (method, wrong, right) => {
    const tested = (value: object) =>
      codes((job) => {
        if (job.survey.moisture) job.survey.moisture.tests = [{ id: 't', method, ...value }];
      });
    expect(tested(wrong)).toEqual(['moisture-without-a-value']);
    expect(tested(right)).toEqual([]);
  });

  test('more cross-cuts failed than tried', () => {
    const cut = (failed: number) =>
      codes((job) => {
        job.survey.onFloor = [{ id: 'f', what: 'paint', crossCuts: { tried: 9, failed } }];
      });
    expect(cut(9)).toEqual([]);
    expect(cut(10)).toEqual(['check-more-failed-than-tried']);
  });

  test.each([
    ['2026-06-10', []],
    ['2026-06-11', ['check-date-ahead']],
    ['2026-06-10T12:00:00+00:00', []],
    ['2026-06-10T12:00:01+00:00', ['check-date-ahead']],
    ['2026-06-10T13:30:00+02:00', []],
  ])('a survey on %s', (on, expected) => {
    expect(
      codes((job) => {
        job.survey.on = on;
      }),
    ).toEqual(expected);
  });

  test('years to come, and every dated reading; without a clock nothing is judged', () => {
    const ahead = (job: Draft): void => {
      if (job.survey.building) job.survey.building.year = 2027;
      job.survey.onFloor = [{ id: 'f', what: 'bare concrete', since: 2027 }];
      if (job.survey.slab) job.survey.slab.cast = '2027-01-01';
      if (job.survey.moisture?.tests?.[0]) job.survey.moisture.tests[0].on = '2027-01-01';
    };
    expect(issues(ahead).map(({ path }) => path.join('.'))).toEqual([
      'survey.slab.cast',
      'survey.moisture.tests.0.on',
      'survey.building.year',
      'survey.onFloor.0.since',
    ]);
    expect(checkJob(jobOf(ahead), catalogueOf())).toEqual([]);
  });
});
