import { describe, expect, test } from 'vitest';
import catalogueJson from '../../../../../jobs/garage/catalogue.json' with { type: 'json' };
import jobJson from '../../../../../jobs/garage/job.json' with { type: 'json' };
import workshopCatalogue from '../../../../../jobs/workshop/catalogue.json' with { type: 'json' };
import workshopJob from '../../../../../jobs/workshop/job.json' with { type: 'json' };
import type { CatalogueFile } from '../../catalogue.ts';
import type { JobFile } from '../../job.ts';
import { type Scenario, scenario } from '../testing/scenario.ts';

type ProductFile = CatalogueFile['products'][number];
type LayerFile = CatalogueFile['systems'][number]['layers'][number];

interface Files {
  readonly job: JobFile;
  readonly catalogue: CatalogueFile;
  readonly base: ProductFile;
  readonly clear: ProductFile;
  readonly baseLayer: LayerFile;
  readonly clearLayer: LayerFile;
}

/** The invented garage with one fact changed; 78 % RH is its highest probe, 1.9, 2.2 and 2.4 MPa are its pull-offs. */
function garage(change: (files: Files) => void = () => undefined, now = '2026-05-12T12:00:00-06:00'): Scenario {
  const job = structuredClone(jobJson) as unknown as JobFile;
  const catalogue = structuredClone(catalogueJson) as unknown as CatalogueFile;
  const [base, clear] = catalogue.products as [ProductFile, ProductFile];
  const [baseLayer, clearLayer] = catalogue.systems.flatMap((one) => one.layers) as [LayerFile, LayerFile];
  change({ job, catalogue, base, clear, baseLayer, clearLayer });
  return scenario({ job, catalogue, now });
}

const codes = (run: Scenario): readonly string[] => run.fitted.verdict.reasons.map((reason) => reason.code);
const reason = (run: Scenario, code: string) => run.fitted.verdict.reasons.find((one) => one.code === code);
const word = (run: Scenario, code: string) => reason(run, code)?.verdict;

test('the garage as it stands: near the moisture limit, too humid for the clear coat at dawn, nothing worse', () => {
  const run = garage();
  expect(run.fitted.verdict.word).toBe('caution');
  expect(codes(run)).toEqual(['system-moisture-near-limit', 'system-climate-air-humid-sometimes']);
  expect(run.fitted.missing).toEqual([]);
});

test('the workshop: 91 against 95 % RH is near; pull-offs of 1.83 mean and 1.4 least meet 1.5 and 1.2 MPa', () => {
  const run = scenario({
    job: workshopJob as unknown as JobFile,
    catalogue: workshopCatalogue as unknown as CatalogueFile,
    now: '2026-10-11T12:00:00+01:00',
  });
  expect(word(run, 'system-moisture-near-limit')).toBe('caution');
  expect(codes(run).filter((code) => code.startsWith('system-bond'))).toEqual([]);
  expect(run.fitted.moistureLimit.map(({ method, layer }) => [method, layer])).toEqual([['ASTM F2170', 'mp']]);
  // 0.12 mm wet at 65 % solids leaves 78 µm.
  expect(run.value('system.ut.dry')).toBeCloseTo(78e-6, 9);
});

describe('moisture', () => {
  const limited = (limit: string) =>
    garage(({ base }) => {
      base.moisture = [{ method: 'ASTM F2170', humidity: limit }];
    });

  test.each([
    ['77.9 %', 'system-moisture-above-limit', 'stop'],
    ['78 %', 'system-moisture-near-limit', 'caution'],
    ['85 %', 'system-moisture-near-limit', 'caution'],
  ] as const)('78 %% RH against a limit of %s: %s', (limit, code, verdict) => {
    expect(word(limited(limit), code)).toBe(verdict);
  });

  test('ten points below the limit is still near, a hair more is not', () => {
    const both = (limit: string) =>
      garage(({ base, clear }) => {
        base.moisture = [{ method: 'ASTM F2170', humidity: limit }];
        clear.moisture = [{ method: 'ASTM F2170', humidity: limit }];
      });
    expect(word(both('88 %'), 'system-moisture-near-limit')).toBe('caution');
    expect(codes(both('88.1 %'))).not.toContain('system-moisture-near-limit');
  });

  test('the weakest coat decides, wherever it lies', () => {
    const run = garage(({ clear }) => {
      clear.moisture = [{ method: 'ASTM F2170', humidity: '75 %' }];
    });
    expect(reason(run, 'system-moisture-above-limit')?.names?.layer).toBe('clear coat');
    expect(reason(run, 'system-moisture-above-limit')?.lift?.code).toBe('system-moisture-above-lift');
  });

  test('another method is never converted; without a counted test it is not known', () => {
    const other = garage(({ base, clear }) => {
      base.moisture = [{ method: 'ASTM F1869', emission: '3 lb/1000 ft²·24 h' }];
      clear.moisture = [];
    });
    expect(word(other, 'system-moisture-other-method')).toBe('not known');
    const none = garage(({ job }) => {
      job.survey.moisture = { tests: [] };
    });
    expect(word(none, 'system-moisture-no-reading')).toBe('not known');
    expect(none.fitted.missing[0]?.meanwhile).toBe('held');
    const silent = garage(({ base, clear }) => {
      base.moisture = [];
      clear.moisture = [];
    });
    expect(word(silent, 'system-moisture-no-limit')).toBe('not known');
  });

  test('emission: within a tenth of the limit is near; the methods are judged each by its own limit', () => {
    const emits = (limit: string) =>
      garage(({ job, base, clear }) => {
        base.moisture = [
          { method: 'ASTM F1869', emission: limit },
          { method: 'ASTM F2170', humidity: '95 %' },
        ];
        clear.moisture = [];
        job.survey.moisture?.tests?.push(
          ...['p1', 'p2', 'p3'].map((where, i) => ({
            id: `dish-${i}`,
            method: 'ASTM F1869' as const,
            edition: '2016a',
            where,
            on: '2026-04-29T09:00:00-06:00',
            wait: '64 h',
            serviceConditionsFor: '72 h',
            air: '70 °F',
            slab: '70 °F',
            emission: '2.7 lb/1000 ft²·24 h',
          })),
        );
      });
    expect(emits('3 lb/1000 ft²·24 h').surveyed.moisture.highest.map((one) => one.method)).toContain('ASTM F1869');
    expect(word(emits('3 lb/1000 ft²·24 h'), 'system-moisture-near-limit')).toBe('caution');
    expect(codes(emits('3.01 lb/1000 ft²·24 h'))).not.toContain('system-moisture-near-limit');
    expect(word(emits('2.69 lb/1000 ft²·24 h'), 'system-moisture-above-limit')).toBe('stop');
  });

  test('a first coat without a limit is not known though the top coat has one', () => {
    expect(
      word(
        garage(({ base }) => {
          base.moisture = [];
        }),
        'system-moisture-first-coat-silent',
      ),
    ).toBe('not known');
  });
});

describe('film', () => {
  test.each([
    ['leastWet', '10 mil', undefined],
    ['leastWet', '10.01 mil', 'system-film-wet-thin'],
    ['mostWet', '10 mil', undefined],
    ['mostWet', '9.99 mil', 'system-film-wet-thick'],
    ['leastDry', '10 mil', undefined],
    ['leastDry', '10.01 mil', 'system-film-dry-thin'],
    ['mostDry', '10 mil', undefined],
    ['mostDry', '9.99 mil', 'system-film-dry-thick'],
    ['mostWetVertical', '10 mil', undefined],
    ['mostWetVertical', '9.99 mil', 'system-film-vertical-thick'],
  ] as const)('base of 10 mil against %s %s: %s', (limit, value, code) => {
    const run = garage(({ base }) => {
      base.film = { mostWetVertical: '20 mil', [limit]: value };
    });
    expect(codes(run).filter((one) => one.startsWith('system-film'))).toEqual(code ? [code] : []);
    if (code) {
      expect(reason(run, code)?.verdict).toBe('stop');
      expect(reason(run, code)?.lift?.code).toBe(`${code}-lift`);
      expect(run.fitted.layers[0]?.reasons.word).toBe('stop');
      expect(run.fitted.layers[1]?.reasons.word).toBe('go');
    }
  });

  test('no limits at all is not known; a sheet silent on verticals is a caution', () => {
    expect(
      word(
        garage(({ base }) => void delete base.film),
        'system-film-unstated',
      ),
    ).toBe('not known');
    const run = garage(({ base }) => {
      base.film = { mostWet: '16 mil' };
    });
    expect(word(run, 'system-film-vertical-unstated')).toBe('caution');
  });

  test('verticals left bare ask for no vertical limit', () => {
    const run = garage(({ job, base }) => {
      base.film = { mostWet: '16 mil' };
      (job.options[0] as NonNullable<JobFile['options'][number]>).leaveOut = ['stem-walls'];
    });
    expect(codes(run)).not.toContain('system-film-vertical-unstated');
    expect(run.fitted.layers[1]?.wetVertical).toBeUndefined();
  });

  test('a film stated dry gives the wet one', () => {
    const run = garage(({ clearLayer }) => {
      delete clearLayer.wetFilm;
      clearLayer.dryFilm = '8.5 mil';
    });
    expect(run.fitted.layers[1]?.wet.value).toBeCloseTo(10 * 25.4e-6, 9);
  });
});

describe('thinner', () => {
  const thinned = (ratio: string, change: (files: Files) => void = () => undefined) =>
    garage((files) => {
      (files.job.options[0] as JobFile['options'][number]).thinner = [{ layer: 'clear', ratio }];
      change(files);
    });

  test('the same dry film needs a higher gauge: 12 mil and 5 % give 12.6 mil, still 10.2 mil dry', () => {
    const run = thinned('5 %');
    expect(codes(run).filter((code) => code.startsWith('system-thinner'))).toEqual([]);
    expect(run.value('system.clear.wet')).toBeCloseTo(12.6 * 25.4e-6, 9);
    expect(run.value('system.clear.dry')).toBeCloseTo(10.2 * 25.4e-6, 9);
    expect(run.value('system.clear.wet') * run.value('system.clear.solids')).toBeCloseTo(
      run.value('system.clear.dry'),
      12,
    );
    expect(run.value('system.clear.wet-vertical')).toBeCloseTo(0.21e-3, 9);
  });

  test('litres of coating stay the same; the thinner comes on top', () => {
    expect(thinned('5 %').value('quantities.clear.needed')).toBeCloseTo(garage().value('quantities.clear.needed'), 9);
    expect(thinned('5 %').value('quantities.clear.thinner')).toBeCloseTo(
      0.05 * garage().value('quantities.clear.needed'),
      9,
    );
  });

  test.each([
    ['5 %', undefined],
    ['5.1 %', 'system-thinner-too-much'],
  ] as const)('%s of at most 5 %%: %s', (ratio, code) => {
    expect(codes(thinned(ratio)).filter((one) => one.startsWith('system-thinner'))).toEqual(code ? [code] : []);
  });

  test('forbidden is a stop, silence is not known, none chosen is nothing', () => {
    expect(
      word(
        thinned('1 %', ({ clear }) => {
          clear.thinner = { allowed: 'no' };
        }),
        'system-thinner-forbidden',
      ),
    ).toBe('stop');
    expect(
      word(
        thinned('1 %', ({ clear }) => void delete clear.thinner),
        'system-thinner-unstated',
      ),
    ).toBe('not known');
    const open = thinned('1 %', ({ clear }) => {
      clear.thinner = { allowed: 'yes' };
    });
    expect(word(open, 'system-thinner-most-unstated')).toBe('not known');
    expect(codes(thinned('0 %')).filter((one) => one.startsWith('system-thinner'))).toEqual([]);
  });
});

describe('bond', () => {
  const asks = (bondNeed: string, bondLeast?: string) =>
    garage(({ base }) => {
      base.bondNeed = bondNeed;
      if (bondLeast) base.bondLeast = bondLeast;
    });
  const bond = (run: Scenario): readonly string[] => codes(run).filter((code) => code.startsWith('system-bond'));

  test('mean 2.1667 and least 1.9 MPa against what the sheet asks', () => {
    expect(bond(asks('1.9 MPa'))).toEqual([]);
    expect(bond(asks('1.91 MPa'))).toEqual(['system-bond-single-low']);
    expect(bond(asks('2.16 MPa', '1.9 MPa'))).toEqual([]);
    expect(bond(asks('2.17 MPa'))).toEqual(['system-bond-mean-below']);
    expect(bond(asks('2 MPa', '1.91 MPa'))).toEqual(['system-bond-single-below']);
    expect(word(asks('2.17 MPa'), 'system-bond-mean-below')).toBe('stop');
  });

  test('no pull-off is not known and held; a silent sheet is not known; two are few', () => {
    const none = garage(({ job }) => {
      job.survey.pullOffs = [];
    });
    expect(word(none, 'system-bond-not-tested')).toBe('not known');
    expect(none.fitted.missing.some((one) => one.path === 'survey.pullOffs' && one.meanwhile === 'held')).toBe(true);
    expect(
      word(
        garage(({ base }) => void delete base.bondNeed),
        'system-bond-unstated',
      ),
    ).toBe('not known');
    const two = garage(({ job }) => {
      job.survey.pullOffs = job.survey.pullOffs?.slice(0, 2);
    });
    expect(word(two, 'system-bond-few')).toBe('caution');
  });
});

describe('climate', () => {
  test.each([
    ['slabLeast', '15.5 °C', []],
    ['slabLeast', '15.6 °C', ['system-climate-slab-cold-sometimes']],
    ['slabLeast', '21.7 °C', ['system-climate-slab-cold-always']],
    ['slabMost', '21.6 °C', []],
    ['slabMost', '21.5 °C', ['system-climate-slab-hot-sometimes']],
    ['airLeast', '14.1 °C', ['system-climate-air-cold-sometimes']],
    ['airMost', '13 °C', ['system-climate-air-hot-always']],
    ['humidityLeast', '46 %', ['system-climate-air-dry-sometimes']],
    ['humidityMost', '44 %', ['system-climate-air-humid-always']],
    ['dewMargin', '3.7 K', ['system-climate-dew-close-sometimes']],
    ['dewMargin', '12 K', ['system-climate-dew-close-always']],
  ] as const)('%s %s: %j', (limit, value, expected) => {
    const run = garage(({ base, clear }) => {
      base.climate = { [limit]: value };
      clear.climate = { slabLeast: '0 °C' };
      delete clear.humidityCured;
    });
    expect(codes(run).filter((code) => code.startsWith('system-climate'))).toEqual(expected);
    const found = expected[0];
    if (found) expect(word(run, found)).toBe(found.endsWith('always') ? 'stop' : 'caution');
  });

  test('nothing read, and a silent sheet, are not known', () => {
    expect(
      word(
        garage(({ job }) => {
          job.survey.climate = [];
        }),
        'system-climate-not-read',
      ),
    ).toBe('not known');
    expect(
      word(
        garage(({ base }) => void delete base.climate),
        'system-climate-unstated',
      ),
    ).toBe('not known');
    const unread = garage(({ job }) => {
      for (const one of job.survey.climate ?? []) delete one.slab;
    });
    expect(word(unread, 'system-climate-slab-unread')).toBe('not known');
  });
});

describe('age, light, chemistry, profile', () => {
  test('concrete 28 days old may be coated, 27 days not, with the date', () => {
    const cast = (date: string) =>
      garage(({ job }) => {
        (job.survey.slab as NonNullable<typeof job.survey.slab>).cast = date;
      });
    expect(codes(cast('2026-04-14'))).not.toContain('system-concrete-too-young');
    const young = reason(cast('2026-04-15'), 'system-concrete-too-young');
    expect(young?.verdict).toBe('stop');
    expect(young?.lift?.names?.on).toBe('2026-05-13');
  });

  test('a casting date nobody knows is not known', () => {
    const run = garage(({ job }) => void delete (job.survey.slab as NonNullable<typeof job.survey.slab>).cast);
    expect(word(run, 'system-age-not-known')).toBe('not known');
  });

  test('a top coat that yellows: patches of sun decide, then the word of the customer', () => {
    const yellows = (sun: 'yes' | 'no' | undefined, patches: boolean) =>
      codes(
        garage(({ job, clear }) => {
          clear.light = 'yellows';
          if (!patches) delete (job.areas[0] as JobFile['areas'][number]).sun;
          if (job.use) {
            if (sun) job.use.sun = sun;
            else delete job.use.sun;
          }
        }),
      ).filter((code) => code.startsWith('system-light'));
    expect(yellows('no', true)).toEqual(['system-light-yellows']);
    expect(yellows('yes', false)).toEqual(['system-light-yellows']);
    expect(yellows(undefined, false)).toEqual(['system-light-sun-unknown']);
    expect(yellows('no', false)).toEqual([]);
    expect(
      word(
        garage(({ clear }) => void delete clear.light),
        'system-light-unstated',
      ),
    ).toBe('caution');
  });

  test('what cures by humidity needs both of its limits', () => {
    const run = garage(({ clear }) => {
      clear.climate = { humidityMost: '80 %' };
    });
    expect(word(run, 'system-chemistry-humidity-unstated')).toBe('caution');
    const blush = garage(({ base }) => {
      base.amine = true;
      base.climate = { slabLeast: '10 °C' };
    });
    expect(word(blush, 'system-chemistry-blush-unstated')).toBe('caution');
  });

  test('profiles that touch agree, profiles apart are a stop', () => {
    const asks = (least: number, most: number) =>
      codes(
        garage(({ base }) => {
          base.profile = { least, most };
        }),
      ).filter((code) => code.includes('profile'));
    expect(asks(2, 3)).toEqual([]);
    expect(asks(3, 4)).toEqual(['system-profile-conflict']);
  });
});

test('an override of a named person stays beside the stop and never becomes go', () => {
  const run = garage(({ job, base }) => {
    base.moisture = [{ method: 'ASTM F2170', humidity: '70 %' }];
    job.overrides = [{ code: 'system-moisture-above-limit', by: 'Mira Tolland', on: '2026-05-11', why: 'test floor' }];
  });
  expect(run.fitted.verdict.word).toBe('stop');
  expect(run.fitted.verdict.overrides?.[0]?.by).toBe('Mira Tolland');
});
