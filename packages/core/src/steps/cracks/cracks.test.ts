import { describe, expect, test } from 'vitest';
import garageCatalogue from '../../../../../jobs/garage/catalogue.json' with { type: 'json' };
import garageJob from '../../../../../jobs/garage/job.json' with { type: 'json' };
import { type CatalogueFile, catalogueFrom } from '../../catalogue.ts';
import { type JobFile, jobFrom } from '../../job.ts';
import { Ledger, Trace } from '../../kernel/trace.ts';
import { voice } from '../../words/say.ts';
import type { OptionContext } from '../context.ts';
import type { CrackPlan, CracksPlan } from '../results.ts';
import { survey } from '../survey/index.ts';
import { dynamicClassFor, staticClassFor, widthOfClass } from './classes.ts';
import { cracks } from './cracks.ts';
import { reachOf } from './reach.ts';

/** Own arithmetic: a ten-thousandth less √(days ÷ (350 (101.6 ÷ 50)² + days)) of it, for the slab of 4 in. */
const left = (days: number): number => 1e-4 * (1 - Math.sqrt(days / (350 * (101.6 / 50) ** 2 + days)));
const FOOT = 0.3048;
type Writable<T> = T extends object ? { -readonly [K in keyof T]: Writable<T[K]> } : T;
interface Files {
  readonly job: Writable<JobFile>;
  readonly catalogue: Writable<CatalogueFile>;
}

function run(change: (files: Files) => void = () => undefined) {
  const files = structuredClone({ job: garageJob, catalogue: garageCatalogue }) as unknown as Files;
  change(files);
  const job = jobFrom(files.job);
  const catalogue = catalogueFrom(files.catalogue);
  if (!job.ok || !catalogue.ok) throw new Error(JSON.stringify([job, catalogue]));
  const option = job.value.options[0];
  const system = catalogue.value.systems.find(({ id }) => id === option?.system);
  if (!option || !system) throw new Error('no option');
  const step = { job: job.value, catalogue: catalogue.value, now: '2026-05-12T18:00:00-06:00', seed: 1 };
  const ctx: OptionContext = {
    ...step,
    option,
    system,
    products: new Map(catalogue.value.products.map((p) => [p.id, p])),
  };
  const ledger = new Ledger();
  const trace = new Trace(ledger);
  const plan = cracks(ctx, survey(step, trace.within('survey')), trace.within('flake.cracks'));
  const v = voice('en', { locale: 'en-US', units: 'metric' }, Object.fromEntries(ledger.entries));
  const said = [...plan.verdict.reasons, ...plan.verdict.reasons.flatMap(({ lift }) => lift ?? []), ...plan.notes];
  const texts = said.map((one) => v.say(one).replaceAll('\u00a0', ' '));
  return { plan, texts, codes: said.map(({ code }) => code) };
}

const line = (plan: CracksPlan, id: string): CrackPlan => {
  const found = plan.cracks.find((one) => one.id === id);
  if (!found) throw new Error(`no line ${id}`);
  return found;
};
const areaOf = ({ job }: Files) => job.areas[0] as NonNullable<Files['job']['areas'][number]>;
const crackOf = (files: Files) =>
  (areaOf(files).cracks ?? [])[0] as NonNullable<ReturnType<typeof areaOf>['cracks']>[number];
const bridging = (files: Files, shown: { class?: 'A5' | 'A2'; width?: string; at: string }) => {
  (files.catalogue.products[0] as Files['catalogue']['products'][number]).crackBridging = shown;
};

describe('the garage', () => {
  const { plan, texts } = run();

  test('a crack of 0.8 mm alike at two temperatures rests and is filled rigid', () => {
    const crack = line(plan, 'crack-1');
    expect(crack).toMatchObject({ state: 'dormant', from: 'two readings', handling: 'fill rigid', planned: 'filled' });
    // Own arithmetic: 0.05 mm over 11 °F of readings, times the 25 K assumed for a season.
    expect(crack.unseen?.value).toBeCloseTo((0.05e-3 / (11 / 1.8)) * 25, 9);
  });

  test('its joints move and are honoured', () => {
    const across = line(plan, 'joint-across');
    // Own arithmetic by the published formula: 0.8 × 10.5 ft × 10e-6 × 25 K; the day 15.5 to 21.6 °C.
    expect(across.slabLength?.value).toBeCloseTo(10.5 * FOOT, 9);
    expect(across.season?.value).toBeCloseTo(0.8 * 10.5 * FOOT * (10e-6 * 25 + left(2528)), 9);
    expect(across.day?.value).toBeCloseTo(0.8 * 10.5 * FOOT * 10e-6 * 6.1, 9);
    expect(across.season?.band).toEqual([(across.season?.value ?? 0) / 2, (across.season?.value ?? 0) * 2]);
    expect(across).toMatchObject({ kind: 'contraction', state: 'moving', handling: 'honour and re-cut' });
    expect(line(plan, 'joint-lengthwise').slabLength?.value).toBeCloseTo(10 * FOOT, 9);
    expect(across.planned).toBe('re-cut and filled');
    expect(texts.join('\n')).toMatch(/a straight line shows in the floor and opens by about/);
    expect(plan.missing.map(({ path }) => path)).toEqual(['place.season']);
  });

  test('coated over because somebody chose it: a caution says that the line returns; a third joint stays honoured', () => {
    const over = run(({ job }) => {
      if (job.options[0]) job.options[0].coatOver = ['joint-across'];
    });
    expect(line(over.plan, 'joint-across')).toMatchObject({
      handling: 'honour and re-cut',
      planned: 'filled and coated over',
    });
    expect(line(over.plan, 'joint-lengthwise').planned).toBe('re-cut and filled');
    expect(over.texts.join('\n')).toMatch(/no coat of this system was shown to bridge the joints .*\(joint-across\)/);
  });
});

describe('movement', () => {
  test('from the warmest slab read, 21.6 °C, to the coldest of the year (own arithmetic)', () => {
    const { plan } = run(({ job }) => {
      job.place.season = { coldest: '1.6 °C', hottest: '30 °C', source: 'owner’s record' };
    });
    expect(line(plan, 'joint-across').season?.value).toBeCloseTo(0.8 * 10.5 * FOOT * (10e-6 * 20 + left(2528)), 9);
    expect(plan.missing).toEqual([]);
  });

  test('a slab shrinks on as the law of drying leaves it: much in its first year, little after seven, all where undated', () => {
    const cast = (on: string) =>
      run(({ job }) => {
        if (job.survey.slab) job.survey.slab.cast = on;
      });
    const opening = (strain: number): number => 0.8 * 10.5 * FOOT * (10e-6 * 25 + strain);
    const season = ({ plan }: ReturnType<typeof run>) => line(plan, 'joint-across').season?.value;
    const undated = run(({ job }) => void delete job.survey.slab?.cast);
    const young = cast('2025-06-10');
    expect(season(undated)).toBeCloseTo(opening(1e-4), 9);
    expect(season(cast('2026-05-12'))).toBeCloseTo(opening(1e-4), 9);
    expect(season(young)).toBeCloseTo(opening(left(336)), 9);
    expect(season(cast('2024-06-10'))).toBeCloseTo(opening(left(701)), 9);
    expect(left(336)).toBeGreaterThan(0.5e-4);
    expect(left(2528)).toBeLessThan(0.25e-4);
    // The day opens by temperature alone.
    expect(line(young.plan, 'joint-across').day?.value).toBeCloseTo(0.8 * 10.5 * FOOT * 10e-6 * 6.1, 9);
  });

  test.each([
    ['0.84 mm', 'dormant', 'fill rigid'],
    ['0.86 mm', 'moving', 'honour and re-cut'],
  ] as const)('%s on the cold slab against 0.8 mm on the warm one: %s', (width, state, handling) => {
    const { plan, codes } = run((files) => {
      (crackOf(files).widths[0] as { width: string }).width = width;
    });
    expect(line(plan, 'crack-1')).toMatchObject({ state, handling, from: 'two readings' });
    expect(codes.includes('cracks-readings-against-word')).toBe(state === 'moving');
    if (state === 'moving') expect(line(plan, 'crack-1').season?.value).toBeCloseTo((0.06e-3 / (11 / 1.8)) * 25, 9);
  });

  test('readings closer than 5 K, or without a slab temperature, leave it to the word, then to the formula', () => {
    const near = (files: Files) => {
      (crackOf(files).widths[0] as { slab?: string }).slab = '59.1 °F';
    };
    expect(line(run(near).plan, 'crack-1')).toMatchObject({ state: 'dormant', from: 'said' });
    const apart = run((files) => {
      (crackOf(files).widths[0] as { slab?: string }).slab = '59 °F';
    });
    expect(line(apart.plan, 'crack-1').from).toBe('two readings');
    const unsaid = run((files) => {
      near(files);
      delete crackOf(files).moves;
    });
    expect(line(unsaid.plan, 'crack-1')).toMatchObject({
      state: 'not known',
      from: 'formula',
      handling: 'fill flexible',
    });
    expect(unsaid.codes).toContain('cracks-may-move');
  });
});

describe('bridging', () => {
  test('0.30 mm needs A3, since A2 covers 0.250 mm only; both sides of each limit (classes from memory)', () => {
    expect(staticClassFor(0.3e-3)).toBe('A3');
    const limits = [0.1, 0.25, 0.5, 1.25, 2.5];
    limits.forEach((limit, i) => {
      expect(staticClassFor(limit * 1e-3)).toBe(`A${i + 1}`);
      expect(staticClassFor((limit + 0.001) * 1e-3)).toBe(i === 4 ? 'beyond every class' : `A${i + 2}`);
    });
    expect(staticClassFor(0)).toBe('none');
    expect(widthOfClass('A2')).toMatchObject({ typed: '0.250 mm' });
  });

  test('day and night: both sides of change and width (classes from memory)', () => {
    expect(dynamicClassFor(0.15e-3, 0.05e-3)).toBe('B2');
    expect(dynamicClassFor(0.15e-3, 0.051e-3)).toBe('B3.1');
    expect(dynamicClassFor(0.151e-3, 0.05e-3)).toBe('B3.1');
    expect(dynamicClassFor(0.3e-3, 0.2e-3)).toBe('B3.1');
    expect(dynamicClassFor(0.3e-3, 0.201e-3)).toBe('B4.1');
    expect(dynamicClassFor(0.5e-3, 0.3e-3)).toBe('B4.1');
    expect(dynamicClassFor(0.5e-3, 0.301e-3)).toBe('beyond every class');
    expect(dynamicClassFor(0.2e-3, 0)).toBe('none');
  });

  test('a joint is bridged only by a film shown to bear it as cold as the slab gets', () => {
    const shown = (at: string, coldest?: string, by: 'A5' | 'A2' = 'A5') =>
      line(
        run((files) => {
          bridging(files, { class: by, at });
          if (coldest) files.job.place.season = { coldest, hottest: '30 °C' };
        }).plan,
        'joint-across',
      );
    expect(shown('-10 °C', '-10 °C')).toMatchObject({ bridges: { answer: 'yes' }, handling: 'reinforce' });
    expect(shown('-9 °C', '-10 °C')).toMatchObject({ bridges: { answer: 'no' }, handling: 'honour and re-cut' });
    expect(shown('-10 °C', '-10 °C', 'A2')).toMatchObject({ bridges: { answer: 'no' } });
    expect(shown('-10 °C')).toMatchObject({ bridges: { answer: 'not known' }, handling: 'honour and re-cut' });
  });

  test('an isolation joint is never bridged, whatever the film bears', () => {
    const { plan } = run((files) => {
      bridging(files, { width: '9 mm', at: '-40 °C' });
      files.job.place.season = { coldest: '-10 °C', hottest: '30 °C' };
      (areaOf(files).joints?.[0] as { kind: string }).kind = 'isolation';
    });
    expect(line(plan, 'joint-lengthwise')).toMatchObject({
      handling: 'honour and re-cut',
      planned: 're-cut and filled',
    });
    expect(line(plan, 'joint-across').handling).toBe('reinforce');
  });

  test('no free length: undefined and no number; with tape the strain is opening by free length (C49 shape)', () => {
    const taped = (width: string) =>
      run((files) => {
        (areaOf(files).joints?.[1] as { bondBreaker?: string }).bondBreaker = width;
      });
    const none = taped('0 mm');
    expect(line(none.plan, 'joint-across').strain).toBeUndefined();
    expect(none.codes).toContain('cracks-strain-undefined');
    const some = line(taped('10 mm').plan, 'joint-across');
    expect(some.strain?.value).toBeCloseTo((some.toBear?.value ?? 0) / 0.01, 9);
  });

  test('elongation without a bridged crack ranks nothing', () => {
    const claim = { what: 'elongation', value: '300 %' };
    const stretchy = run(({ catalogue }) => {
      (catalogue.products[0] as Files['catalogue']['products'][number]).properties = [claim];
    });
    expect(stretchy.codes).toContain('cracks-elongation-ranks-nothing');
    const proved = run((files) => {
      (files.catalogue.products[0] as Files['catalogue']['products'][number]).properties = [claim];
      bridging(files, { class: 'A2', at: '-10 °C' });
      for (const other of files.catalogue.products.slice(1)) delete other.properties;
    });
    expect(proved.codes).not.toContain('cracks-elongation-ranks-nothing');
  });

  test('a claim that states neither class nor width is refused', () => {
    expect(() => run((files) => bridging(files, { at: '23 °C' }))).toThrow(/catalogue-bridging-states-nothing/);
  });
});

describe('the slab beside a line', () => {
  const room = [
    [0, 0],
    [10, 0],
    [10, 6],
    [0, 6],
  ] as const;

  test('runs to the next joint or wall, square to the line', () => {
    expect(
      reachOf(
        [
          [4, 0],
          [4, 6],
        ],
        room,
        [],
      ),
    ).toEqual([4, 6]);
    expect(
      reachOf(
        [
          [4, 0],
          [4, 6],
        ],
        room,
        [
          [
            [7, 0],
            [7, 6],
          ],
        ],
      ),
    ).toEqual([4, 3]);
    // A joint along the way from the crossing is no end of the slab.
    expect(
      reachOf(
        [
          [4, 0],
          [4, 6],
        ],
        room,
        [
          [
            [0, 3],
            [10, 3],
          ],
        ],
      ),
    ).toEqual([4, 6]);
  });

  test('a joint on the wall has no slab beyond it, a closed line no direction', () => {
    expect(
      reachOf(
        [
          [0, 0],
          [0, 6],
        ],
        room,
        [],
      ),
    ).toBeUndefined();
    expect(
      reachOf(
        [
          [4, 0],
          [5, 1],
          [4, 0],
        ],
        room,
        [],
      ),
    ).toBeUndefined();
  });
});
