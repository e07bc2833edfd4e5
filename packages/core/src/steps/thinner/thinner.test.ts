import { describe, expect, test } from 'vitest';
import garageCatalogue from '../../../../../jobs/garage/catalogue.json' with { type: 'json' };
import garageJob from '../../../../../jobs/garage/job.json' with { type: 'json' };
import { type CatalogueFile, catalogueFrom } from '../../catalogue.ts';
import { type JobFile, jobFrom } from '../../job.ts';
import { Ledger, Trace } from '../../kernel/trace.ts';
import { voice } from '../../words/say.ts';
import type { OptionContext } from '../context.ts';
import type { CoatThinner } from '../results.ts';
import { survey } from '../survey/index.ts';
import { system } from '../system/index.ts';
import { exemptionOf, vocLimitOf } from './place.ts';
import { thinner } from './thinner.ts';

type Writable<T> = T extends object ? { -readonly [K in keyof T]: Writable<T[K]> } : T;
interface Files {
  readonly job: Writable<JobFile>;
  readonly catalogue: Writable<CatalogueFile>;
}
type Limits = NonNullable<Files['job']['place']['vocLimits']>;

function jobOf(file: unknown) {
  const job = jobFrom(file);
  if (!job.ok) throw new Error(JSON.stringify(job.issues));
  return job.value;
}

function run(ratio: string | undefined, change: (files: Files) => void = () => undefined) {
  const files = structuredClone({ job: garageJob, catalogue: garageCatalogue }) as unknown as Files;
  if (ratio) (files.job.options[0] as Files['job']['options'][number]).thinner = [{ layer: 'clear', ratio }];
  change(files);
  const job = jobOf(files.job);
  const catalogue = catalogueFrom(files.catalogue);
  if (!catalogue.ok) throw new Error(JSON.stringify(catalogue.issues));
  const option = job.options[0];
  const chosen = catalogue.value.systems.find(({ id }) => id === option?.system);
  if (!option || !chosen) throw new Error('no option');
  const step = { job, catalogue: catalogue.value, now: '2026-05-12T18:00:00-06:00', seed: 1 };
  const products = new Map(catalogue.value.products.map((one) => [one.id, one]));
  const ctx: OptionContext = { ...step, option, system: chosen, products };
  const ledger = new Ledger();
  const trace = new Trace(ledger);
  const fitted = system(ctx, survey(step, trace.within('survey')), trace.within('flake.system'));
  const plan = thinner(ctx, fitted, trace.within('flake.thinner'));
  const v = voice('en', { locale: 'en-US', units: 'metric' }, Object.fromEntries(ledger.entries));
  const said = [
    ...plan.verdict.reasons,
    ...plan.verdict.reasons.flatMap(({ lift }) => lift ?? []),
    ...plan.notes,
    ...plan.missing.flatMap(({ fact, changes }) => [fact, changes]),
  ];
  for (const one of said) expect(v.say(one)).not.toMatch(/\{|undefined|NaN|\bsafe\b|compliant/i);
  const clear = plan.coats.find(({ layer }) => layer === 'clear') as CoatThinner;
  return { plan, clear, fitted, codes: said.map(({ code }) => code) };
}

const clearOf = ({ catalogue }: Files) =>
  catalogue.products.find(({ id }) => id === 'clear-c') as Files['catalogue']['products'][number];
const limited =
  (limit: string, more: Partial<Limits[number]> = {}) =>
  (files: Files) => {
    files.job.place.vocLimits = [
      { category: 'floor coatings', limit, source: 'Halden air rule 7 (invented)', date: '2024-01-01', ...more },
    ];
  };

describe('gauge and dry film', () => {
  test('250 µm dry at 80 % solids: 312.5 µm wet, 343.75 µm with 10 % thinner; the old gauge leaves 227.3 µm (own arithmetic)', () => {
    const { clear, fitted } = run('10 %', (files) => {
      clearOf(files).volumeSolids = '80 %';
      (clearOf(files).thinner as { most: string }).most = '10 %';
      const layer = files.catalogue.systems[0]?.layers[1];
      if (!layer) throw new Error('no clear coat');
      delete layer.wetFilm;
      layer.dryFilm = '250 µm';
    });
    expect(clear.dry.value).toBeCloseTo(250e-6, 12);
    expect(clear.wet.value).toBeCloseTo(343.75e-6, 12);
    expect(clear.dryAtOldGauge?.value).toBeCloseTo(227.27e-6, 8);
    expect(fitted.layers[1]?.solids.value).toBeCloseTo(0.7273, 4);
  });

  test('nothing thinned: nothing said, but the most is known', () => {
    const { plan, clear } = run(undefined);
    expect(plan.verdict.word).toBe('go');
    expect([...plan.notes, ...plan.missing]).toEqual([]);
    expect(clear.most?.value).toBe(0.05);
    expect(plan.coats[0]).toMatchObject({ layer: 'base', allowed: 'no' });
    expect(plan.coats[0]?.most).toBeUndefined();
  });

  test('trapped solvent is a caution; open time as the sheet says', () => {
    const { codes } = run('5 %');
    expect(codes).toContain('thinner-entrapment');
    expect(codes).toContain('thinner-open-time-not-known');
    const longer = run('5 %', (files) => {
      (clearOf(files).thinner as { lengthensOpenTime: string }).lengthensOpenTime = 'yes';
    });
    expect(longer.codes).toContain('thinner-open-time-yes');
  });
});

describe('the limit of the place', () => {
  test('none entered: the sheet alone bounds, and what is missing is said', () => {
    const { plan, clear } = run('5 %');
    expect(clear).toMatchObject({ againstLimit: 'not known' });
    expect(clear.voc?.value).toBeCloseTo((90 + 0.05 * 880) / 1.05, 6);
    expect(plan.missing.map(({ path }) => path)).toEqual(['place.vocLimits']);
  });

  test('the most is the lower of sheet and limit: (100 − 90) ÷ (880 − 100) of the coating (own arithmetic)', () => {
    const { clear, codes } = run('5 %', limited('100 g/L'));
    expect(clear.mostByLimit?.value).toBeCloseTo(10 / 780, 9);
    expect(clear.most?.value).toBeCloseTo(10 / 780, 9);
    expect(clear.againstLimit).toBe('above');
    expect(codes).toContain('thinner-voc-above-limit');
    const loose = run('5 %', limited('250 g/L'));
    expect(loose.clear.most?.value).toBe(0.05);
    expect(loose.clear.againstLimit).toBe('at or below the figure you entered');
  });

  test('both sides of it', () => {
    // Own arithmetic: 134 g in 1.05 L are 127.619 g/L.
    expect(run('5 %', limited('127.7 g/L')).clear.againstLimit).toBe('at or below the figure you entered');
    expect(run('5 %', limited('127.6 g/L')).clear.againstLimit).toBe('above');
    expect(run(undefined, limited('90 g/L')).codes).toEqual([]);
    expect(run(undefined, limited('89.9 g/L')).codes).toContain('thinner-voc-over-already');
    expect(run('5 %', limited('89.9 g/L')).codes).toContain('thinner-voc-over-already');
  });

  test('an exempt thinner leaves the figure as it is, and the sheet still bounds it', () => {
    const exempt = (files: Files) => {
      limited('100 g/L')(files);
      files.job.place.exempt = [
        {
          solvent: "The sheet's own thinner",
          source: 'Halden air rule 2 (invented)',
          date: '2020-01-01',
        },
      ];
    };
    const { clear, codes } = run('5 %', exempt);
    expect(clear).toMatchObject({ exempt: true, againstLimit: 'at or below the figure you entered' });
    expect(clear.voc?.value).toBe(90);
    expect(clear.most?.value).toBe(0.05);
    expect(codes).toContain('thinner-exempt');
    expect(codes).toContain('thinner-vapour');
    const asUsed = run('5 %', (files) => {
      exempt(files);
      limited('100 g/L', { basis: 'as used' })(files);
    });
    expect(asUsed.clear).toMatchObject({ exempt: false, againstLimit: 'above' });
  });

  test('a limit no lighter than the thinner is never reached by it', () => {
    const { clear, codes } = run('5 %', limited('880 g/L'));
    expect(clear.mostByLimit).toBeUndefined();
    expect(clear.most?.value).toBe(0.05);
    expect(codes).toContain('thinner-limit-never-reached');
    expect(run('5 %', limited('879 g/L')).clear.mostByLimit?.value).toBeGreaterThan(1);
  });

  test('what the sheet leaves out is asked for', () => {
    const noVoc = run('5 %', (files) => {
      limited('250 g/L')(files);
      delete clearOf(files).voc;
    });
    expect(noVoc.plan.missing.map(({ path }) => path)).toEqual(['catalogue.products.clear-c.voc']);
    const noDensity = run('5 %', (files) => {
      limited('250 g/L')(files);
      delete clearOf(files).thinner?.density;
    });
    expect(noDensity.plan.missing.map(({ path }) => path)).toEqual(['catalogue.products.clear-c.thinner.density']);
    expect(noDensity.clear.againstLimit).toBe('not known');
  });
});

describe('rules of a place', () => {
  const job = (place: Partial<Files['job']['place']>) =>
    jobOf({ ...garageJob, place: { ...garageJob.place, ...place } });
  const rule = (limit: string, date: string, more: Partial<Limits[number]> = {}) => ({
    category: 'floor coatings',
    limit,
    source: 'invented',
    date,
    ...more,
  });

  test('the newest in force on the day; not one day before', () => {
    const of = job({ vocLimits: [rule('250 g/L', '2009-01-01'), rule('100 g/L', '2024-01-01')] });
    expect(vocLimitOf(of, 'any', '2023-12-31')?.limit.value).toBe(250);
    expect(vocLimitOf(of, 'any', '2024-01-01')?.limit.value).toBe(100);
    expect(vocLimitOf(of, 'any', '2008-12-31')).toBeUndefined();
  });

  test('of several categories the lowest; one that names products holds for those alone', () => {
    const of = job({
      vocLimits: [
        rule('250 g/L', '2009-01-01'),
        rule('100 g/L', '2010-01-01', { category: 'sealers', products: ['primer'] }),
      ],
    });
    expect(vocLimitOf(of, 'primer', '2026-01-01')?.limit.value).toBe(100);
    expect(vocLimitOf(of, 'clear-c', '2026-01-01')?.limit.value).toBe(250);
  });

  test('exempt is a matter of name and date', () => {
    const of = job({ exempt: [{ solvent: 'Acetone', source: 'invented', date: '1995-06-16' }] });
    expect(exemptionOf(of, ' acetone', '1995-06-16')?.solvent).toBe('Acetone');
    expect(exemptionOf(of, 'acetone', '1995-06-15')).toBeUndefined();
    expect(exemptionOf(of, 'xylene', '2026-01-01')).toBeUndefined();
    expect(exemptionOf(of, undefined, '2026-01-01')).toBeUndefined();
  });
});
