import { describe, expect, test } from 'vitest';
import garageCatalogue from '../../../../../jobs/garage/catalogue.json' with { type: 'json' };
import garageJob from '../../../../../jobs/garage/job.json' with { type: 'json' };
import garagePrices from '../../../../../jobs/garage/price-book.json' with { type: 'json' };
import workshopCatalogue from '../../../../../jobs/workshop/catalogue.json' with { type: 'json' };
import workshopJob from '../../../../../jobs/workshop/job.json' with { type: 'json' };
import workshopPrices from '../../../../../jobs/workshop/price-book.json' with { type: 'json' };
import { voice } from '../../words/index.ts';
import { type Costed, costing, type Files } from '../testing/costed.ts';

const golden = costing({
  garage: { job: garageJob, catalogue: garageCatalogue, priceBook: garagePrices },
  workshop: { job: workshopJob, catalogue: workshopCatalogue, priceBook: workshopPrices },
});
/** A golden job after a change; everything it says is said, so that no word or figure is missing. */
const costed: typeof golden = (...args) => {
  const run = golden(...args);
  const reader = { locale: 'en-US', units: 'imperial', currency: run.price.currency ?? 'USD' } as const;
  const v = voice('en', reader, Object.fromEntries(run.entries));
  for (const one of run.said()) expect(v.say(one)).not.toMatch(/undefined|NaN/);
  return run;
};

/** Readings of one place on the day of the garage, `HH:MM` local time. */
type Read = readonly [time: string, air: string, humidity: string, slab?: string];

const AT = (time: string): string => `2026-05-13T${time}:00-06:00`;
const climate = (files: Files, reads: readonly Read[]) => {
  files.job.survey.climate = reads.map(([time, air, humidity, slab]) => ({
    at: AT(time),
    air,
    humidity,
    ...(slab ? { slab } : {}),
  }));
};
const option = (files: Files) => {
  const first = files.job.options[0];
  if (!first) throw new Error('the golden job has an option');
  return first;
};
const product = (files: Files, id: string) => {
  const found = files.catalogue.products.find((one) => one.id === id);
  if (!found) throw new Error(`no product ${id}`);
  return found;
};
const starts = (files: Files, base: string, clear?: string) => {
  option(files).starts = [{ layer: 'base', at: AT(base) }, ...(clear ? [{ layer: 'clear', at: AT(clear) }] : [])];
};
const rates = ({ entries }: Costed): readonly number[] =>
  [...entries.values()].flatMap((e) => (e.kind === 'figure' && e.formula === 'hours/slab-rate' ? [e.value] : []));

/** A dry, even day: nothing against a coat at 12:00. */
const EVEN: readonly Read[] = [
  ['10:00', '20 °C', '50 %', '20 °C'],
  ['12:00', '20 °C', '50 %', '20 °C'],
  ['18:00', '20 °C', '50 %', '20 °C'],
  ['23:00', '20 °C', '50 %', '20 °C'],
];
const day = (reads: readonly Read[], more: (files: Files) => void = () => undefined) =>
  costed('garage', (files) => {
    climate(files, reads);
    starts(files, '12:00', '15:00');
    delete files.job.areas[0]?.sun;
    more(files);
  });

describe('the garage of 13 May (own arithmetic)', () => {
  const run = costed('garage');

  test('11:45 on a slab that warms 1.8 K between 10:00 and 12:00: 0.9 K/h, with the way out', () => {
    expect(rates(run).map((r) => r * 3600)[0]).toBeCloseTo(0.9, 9);
    const reason = run.hours.verdict.reasons.find(({ code }) => code === 'hours-slab-warming');
    expect(reason?.verdict).toBe('caution');
    expect(reason?.lift).toEqual({ code: 'hours-slab-warming-lift-until', names: { at: '2026-05-13 16:00' } });
  });

  test('the sun at the door is named for the base coat and not for the clear coat at 16:30', () => {
    expect(run.gate('base')).toEqual(['hours-slab-warming', 'hours-sun-on-the-floor']);
    expect(run.gate('clear')).toEqual([]);
  });

  test('margin: the lowest of start and night, 4.5 K for the base coat, 7.4 K at 23:00 for the clear coat', () => {
    const [base, clear] = run.hours.gates;
    // The table of the scenario rounds its dew points to 0.1 K.
    expect(Math.abs((base?.margin?.value ?? 0) - 4.5)).toBeLessThanOrEqual(0.1);
    expect(Math.abs((clear?.margin?.value ?? 0) - 7.4)).toBeLessThanOrEqual(0.1);
    expect(run.hours.verdict.word).toBe('caution');
  });

  test('two people cannot mix, roll and broadcast; three can', () => {
    const found = (people: number) =>
      costed('garage', (files) => {
        option(files).people = people;
      }).hours.verdict.reasons.flatMap(({ code }) => (/hands|people/.test(code) ? [code] : []));
    expect(found(1)).toEqual(['hours-one-pair-of-hands']);
    expect(found(2)).toEqual(['hours-two-people-broadcast']);
    expect(found(3)).toEqual([]);
  });
});

/** The hall with readings of one morning only and a start for its first coat. */
const morning = costed('workshop', (files) => {
  const at = (time: string): string => `2026-10-12T${time}:00+01:00`;
  files.job.survey.climate = [
    { at: at('06:00'), where: 'p6', air: '11 °C', humidity: '80 %', slab: '14.0 °C' },
    { at: at('10:00'), where: 'p6', air: '14.5 °C', humidity: '68 %', slab: '14.3 °C' },
    { at: at('14:00'), where: 'p6', air: '17 °C', humidity: '60 %', slab: '15.2 °C' },
  ];
  option(files).starts = [{ layer: 'mp', at: at('10:00') }];
});

test('workshop: the night of the primer is not read, and coats without a start are not known', () => {
  expect(morning.gate('mp')).toContain('hours-night-not-read-to-the-end');
  for (const layer of ['eb', 'es', 'ut']) expect(morning.gate(layer)).toEqual(['hours-no-start']);
  expect(morning.hours.verdict.word).toBe('not known');
  expect(morning.hours.missing.map(({ path, meanwhile }) => [path, meanwhile])).toEqual([
    ['options.0.starts', 'held'],
    ['survey.climate', 'held'],
  ]);
  // 14.3 °C at 10:00 and 15.2 °C at 14:00: 0.225 K/h (own arithmetic).
  expect(rates(morning)[0]).toBeCloseTo(0.225 / 3600, 12);
});

describe('readings near the start', () => {
  test('none within two hours: not known, with what to read', () => {
    const run = day(EVEN.filter(([time]) => time !== '12:00' && time !== '10:00'));
    expect(run.gate('base')).toContain('hours-no-reading');
    const lift = run.hours.verdict.reasons.find(({ code }) => code === 'hours-no-reading')?.lift;
    expect(lift?.names?.at).toBe('2026-05-13 12:00');
  });

  test('exactly two hours counts, a minute more does not', () => {
    const at = (time: string) => day([[time, '20 °C', '50 %', '20 °C'], ...EVEN.slice(2)]).gate('base');
    expect(at('10:00')).not.toContain('hours-no-reading');
    expect(at('09:59')).toContain('hours-no-reading');
  });

  test('a reading without the slab is none', () => {
    expect(day([['12:00', '20 °C', '50 %'], ...EVEN.slice(2)]).gate('base')).toContain('hours-no-reading');
  });
});

describe('margin above the dew point', () => {
  // Air of 20 °C at 100 %: the dew point is 20.000 °C, whatever the formula, so the margin is the slab less 20 K.
  const at = (slab: string, more?: (files: Files) => void) =>
    day(
      [
        ['12:00', '20 °C', '100 %', slab],
        ['12:30', '20 °C', '100 %', slab],
        ['18:00', '20 °C', '50 %', '20 °C'],
        ['23:00', '20 °C', '50 %', '20 °C'],
      ],
      (files) => {
        delete product(files, 'base-b').climate?.humidityMost;
        more?.(files);
      },
    ).gate('base');

  test('the custom of 3 °C where the sheet says nothing, on both sides', () => {
    expect(at('22.99 °C')).toContain('hours-margin-start');
    expect(at('23 °C')).not.toContain('hours-margin-start');
    expect(at('23 °C')).toContain('hours-margin-start-within-error');
    expect(at('29 °C')).not.toContain('hours-margin-start-within-error');
  });

  test('the rule of the sheet in its own unit: 5 °F is 2.78 K, not 3 K', () => {
    const fahrenheit = (files: Files) => {
      product(files, 'base-b').climate = { ...product(files, 'base-b').climate, dewMargin: '5 °F' };
    };
    expect(at('22.8 °C', fahrenheit)).not.toContain('hours-margin-start');
    expect(at('22.77 °C', fahrenheit)).toContain('hours-margin-start');
  });

  test('in the night it is a stop too, named as the night', () => {
    const run = day([...EVEN.slice(0, 2), ['18:00', '20 °C', '100 %', '22 °C'], ['23:00', '20 °C', '50 %', '20 °C']]);
    expect(run.gate('base')).toContain('hours-margin-night');
    expect(run.gate('base')).not.toContain('hours-margin-start');
  });
});

describe('night', () => {
  test('counts up to the first reading at or after foot traffic', () => {
    // Foot after 2 h by the sheet: 14:00.
    const at = (time: string) =>
      day([...EVEN.slice(0, 2), [time, '20 °C', '50 %', '20 °C']], (files) => starts(files, '12:00')).gate('base');
    expect(at('14:00')).not.toContain('hours-night-not-read-to-the-end');
    expect(at('13:59')).toContain('hours-night-not-read-to-the-end');
  });

  test('nothing after the start: not read at all', () => {
    expect(day(EVEN.slice(0, 2), (files) => starts(files, '12:00')).gate('base')).toContain('hours-night-not-read');
  });

  test('a slab that falls below the sheet while it cures is a caution', () => {
    const run = day([...EVEN.slice(0, 2), ['18:00', '10 °C', '30 %', '4 °C'], ['23:00', '20 °C', '50 %', '20 °C']]);
    expect(run.gate('base')).toContain('hours-slab-cold-night');
    expect(run.hours.verdict.reasons.find(({ code }) => code === 'hours-slab-cold-night')?.verdict).toBe('caution');
  });
});

describe('limits of the sheet at the start, both sides (base: slab 40-95 °F, air 40-95 °F, at most 85 %)', () => {
  const at = (air: string, humidity: string, slab: string, more?: (files: Files) => void) =>
    day([['12:00', air, humidity, slab], ['12:30', air, humidity, slab], ...EVEN.slice(2)], more).gate('base');

  test.each([
    ['20 °C', '10 %', '40 °F', '39.9 °F', 'hours-slab-cold-start'],
    ['20 °C', '10 %', '95 °F', '95.1 °F', 'hours-slab-hot-start'],
  ])('slab in air of %s and %s: %s passes, %s does not', (air, humidity, good, bad, code) => {
    expect(at(air, humidity, good)).not.toContain(code);
    expect(at(air, humidity, bad)).toContain(code);
  });

  test.each([
    ['40 °F', '39.9 °F', 'hours-air-cold-start'],
    ['95 °F', '95.1 °F', 'hours-air-hot-start'],
  ])('air of %s passes, %s does not', (good, bad, code) => {
    expect(at(good, '30 %', '30 °C')).not.toContain(code);
    expect(at(bad, '30 %', '30 °C')).toContain(code);
  });

  test('humidity', () => {
    expect(at('20 °C', '85 %', '28 °C')).not.toContain('hours-air-humid-start');
    expect(at('20 °C', '85.1 %', '28 °C')).toContain('hours-air-humid-start');
    const dry = (files: Files) => {
      product(files, 'base-b').climate = { humidityLeast: '40 %' };
    };
    expect(at('20 °C', '40 %', '20 °C', dry)).not.toContain('hours-air-dry-start');
    expect(at('20 °C', '39.9 %', '20 °C', dry)).toContain('hours-air-dry-start');
  });

  test('a sheet without limits is not known', () => {
    const silent = (files: Files) => {
      delete product(files, 'base-b').climate;
    };
    expect(at('20 °C', '50 %', '20 °C', silent)).toContain('hours-sheet-silent');
  });
});

describe('warming slab', () => {
  const slabs = (before: string, after: string) =>
    day([['11:00', '22 °C', '40 %', before], ['13:00', '22 °C', '40 %', after], ...EVEN.slice(2)]).gate('base');

  test('any rise is a caution on concrete, a steady or falling slab is none', () => {
    expect(slabs('20 °C', '20.1 °C')).toContain('hours-slab-warming');
    expect(slabs('20 °C', '20 °C')).not.toContain('hours-slab-warming');
    expect(slabs('20 °C', '19 °C')).not.toContain('hours-slab-warming');
  });

  test('a coat on another coat is not asked', () => {
    const run = day([
      ['14:00', '22 °C', '40 %', '20 °C'],
      ['16:00', '22 °C', '40 %', '24 °C'],
      ['23:00', '20 °C', '50 %', '20 °C'],
    ]);
    expect(run.gate('clear')).not.toContain('hours-slab-warming');
  });

  test('one reading alone shows no trend', () => {
    const run = day([
      ['12:00', '20 °C', '50 %', '20 °C'],
      ['18:00', '20 °C', '50 %', '20 °C'],
    ]);
    expect(run.gate('base')).toContain('hours-trend-not-known');
  });

  test('two places are not one trend', () => {
    const run = day(EVEN, (files) => {
      files.job.survey.climate = [
        { at: AT('11:00'), where: 'a', air: '22 °C', humidity: '40 %', slab: '18 °C' },
        { at: AT('13:00'), where: 'b', air: '22 °C', humidity: '40 %', slab: '25 °C' },
      ];
    });
    expect(run.gate('base')).toContain('hours-trend-not-known');
  });
});

describe('sun on the floor', () => {
  const patch = (from?: string, until?: string) =>
    day(EVEN, (files) => {
      const [area] = files.job.areas;
      if (!area) throw new Error('the garage has an area');
      area.sun = [
        {
          id: 'sun',
          outline: [
            ['1 ft', '1 ft'],
            ['2 ft', '1 ft'],
            ['2 ft', '2 ft'],
          ],
          ...(from ? { from: AT(from) } : {}),
          ...(until ? { until: AT(until) } : {}),
        },
      ];
    }).gate('base');

  test('while the coat may still be marked: 12:00 until it may be coated over, 14:00', () => {
    expect(patch('10:00', '12:01')).toContain('hours-sun-on-the-floor');
    expect(patch('10:00', '12:00')).not.toContain('hours-sun-on-the-floor');
    expect(patch('13:59', '16:00')).toContain('hours-sun-on-the-floor');
    expect(patch('14:00', '16:00')).not.toContain('hours-sun-on-the-floor');
    expect(patch()).toContain('hours-sun-on-the-floor');
  });
});

describe('recoat window of the coat below (2 h to 8 h at 24 °C)', () => {
  const at = (clear: string) => day(EVEN, (files) => starts(files, '12:00', clear)).gate('clear');

  test('both sides of both ends', () => {
    expect(at('13:59')).toContain('hours-recoat-too-early');
    expect(at('14:00')).not.toContain('hours-recoat-too-early');
    expect(at('20:00')).not.toContain('hours-recoat-too-late');
    expect(at('20:01')).toContain('hours-recoat-too-late');
  });

  test('on a slab colder than the sheet it is only a condition; a sheet without a window is a caution', () => {
    const notes = (slab: string) =>
      day(EVEN.map(([time, air, humidity]) => [time, air, humidity, slab] as const)).hours.notes.map(
        ({ code }) => code,
      );
    // The coat of 12:00 is read at 12:00; the next one follows at 15:00.
    expect(notes('23.9 °C')).toContain('hours-recoat-if-as-warm');
    expect(notes('24 °C')).not.toContain('hours-recoat-if-as-warm');
    const silent = day(EVEN, (files) => {
      const base = product(files, 'base-b');
      base.times = (base.times ?? []).filter(({ what }) => what !== 'recoat from');
    });
    expect(silent.gate('clear')).toContain('hours-recoat-not-on-sheet');
  });

  test('a coat before the one below is a stop', () => {
    expect(at('12:00')).toContain('hours-coats-out-of-order');
  });
});

describe('deadlines', () => {
  const said = (by: string, slab = '24 °C') =>
    day(
      EVEN.map(([time, air, humidity]) => [time, air, humidity, slab] as const),
      (files) => {
        files.job.use = { footBy: AT(by) };
      },
    );
  const codes = (run: Costed): readonly string[] =>
    [...run.hours.notes, ...run.hours.verdict.reasons].flatMap(({ code }) => (/deadline/.test(code) ? [code] : []));

  test('the clear coat of 15:00 may be walked on 5 h later by its sheet at 24 °C', () => {
    expect(codes(said('20:00'))).toEqual(['hours-deadline-met']);
    expect(codes(said('19:59'))).toEqual(['hours-deadline-missed']);
  });

  test('on a colder slab it is only a condition', () => {
    expect(codes(said('20:00', '23 °C'))).toEqual(['hours-deadline-if-as-warm']);
  });

  test('a sheet without such a time, and a coat without a start', () => {
    const none = day(EVEN, (files) => {
      files.job.use = { footBy: AT('22:00') };
      const clear = product(files, 'clear-c');
      clear.times = (clear.times ?? []).filter(({ what }) => what !== 'foot');
    });
    expect(codes(none)).toEqual(['hours-deadline-not-on-sheet']);
    expect(codes(morning)).toEqual(['hours-deadline-no-start']);
  });
});

test('an override stays visible and never becomes go', () => {
  const run = day(
    [['12:00', '20 °C', '10 %', '96 °F'], ['12:30', '20 °C', '10 %', '96 °F'], ...EVEN.slice(2)],
    (files) => {
      files.job.overrides = [
        { code: 'hours-slab-hot-start', by: 'J. Pellworth', on: '2026-05-13', why: 'shaded by noon' },
      ];
    },
  );
  expect(run.hours.verdict.word).toBe('stop');
  expect(run.hours.gates[0]?.verdict.overrides).toHaveLength(1);
});
