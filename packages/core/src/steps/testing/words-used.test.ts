import { expect, test } from 'vitest';
import garageCatalogue from '../../../../../jobs/garage/catalogue.json' with { type: 'json' };
import garageJob from '../../../../../jobs/garage/job.json' with { type: 'json' };
import workshopCatalogue from '../../../../../jobs/workshop/catalogue.json' with { type: 'json' };
import workshopJob from '../../../../../jobs/workshop/job.json' with { type: 'json' };
import type { CatalogueFile } from '../../catalogue.ts';
import type { JobFile } from '../../job.ts';
import type { Said } from '../../kernel/said.ts';
import quantitiesWords from '../../words/en/quantities.json' with { type: 'json' };
import systemWords from '../../words/en/system.json' with { type: 'json' };
import { voice } from '../../words/say.ts';
import { type Scenario, scenario } from './scenario.ts';

function everythingSaid({ fitted, quantities }: Scenario): readonly Said[] {
  const steps = [fitted, quantities];
  return [
    ...steps.flatMap((step) => step.notes),
    ...steps.flatMap((step) =>
      step.verdict.reasons.flatMap((reason) => [reason, ...(reason.lift ? [reason.lift] : [])]),
    ),
    ...steps.flatMap((step) => step.missing.flatMap((missing) => [missing.fact, missing.changes])),
    ...quantities.buying.flatMap((line) => (line.turns ? [line.turns] : [])),
  ];
}

const garage = scenario({
  job: garageJob as unknown as JobFile,
  catalogue: garageCatalogue as unknown as CatalogueFile,
  now: '2026-05-12T12:00:00-06:00',
});

test.each([
  ['garage', garage],
  [
    'workshop',
    scenario({ job: workshopJob as unknown as JobFile, catalogue: workshopCatalogue as unknown as CatalogueFile }),
  ],
])('%s: every sentence of system and quantities can be said, in both unit systems', (_, run) => {
  const said = everythingSaid(run);
  expect(said.length).toBeGreaterThan(3);
  for (const units of ['imperial', 'metric'] as const) {
    const speaker = voice('en', { locale: 'en-US', units }, Object.fromEntries(run.entries));
    for (const one of said) {
      const text = speaker.say(one);
      expect(text).not.toMatch(/\{|undefined|NaN/);
      expect(text.length).toBeGreaterThan(10);
    }
  }
});

test('moisture near the limit is called by name, with both figures and the room between', () => {
  const speaker = voice('en', { locale: 'en-US', units: 'metric' }, Object.fromEntries(garage.entries));
  const texts = everythingSaid(garage).map((one) => speaker.say(one).replaceAll('\u00a0', ' '));
  expect(texts).toContain(
    'Moisture near the limit: the highest reading by ASTM F2170 is 78 % RH, 7 % RH below the 85 % RH that base coat bears. Test again shortly before coating.',
  );
});

/** Sources as text, so that a code without words, or words without a code, cannot pass. */
const sources = import.meta.glob(['../{system,quantities}/*.ts', '../check/{catalogue,mixes-and-coats}.ts'], {
  query: '?raw',
  import: 'default',
  eager: true,
}) as Readonly<Record<string, string>>;

const FAMILIES: Readonly<Record<string, RegExp>> = {
  'system-climate-':
    /^system-climate-(slab-cold|slab-hot|air-cold|air-hot|air-dry|air-humid|dew-close)-(always|sometimes|lift)$/,
  'system-unread-': /^system-climate-(slab|air|humidity|margin)-unread$/,
  'system-film-': /^system-film-(dry-thin|dry-thick|wet-thin|wet-thick|vertical-thick)(-lift)?$/,
  'quantities-turns-': /^quantities-turns-(texture|profile|surplus|area)-(up|down|up-packs)$/,
  'quantities-filler-': /^quantities-filler-(rigid|flexible)$/,
  'quantities-includes-': /^quantities-consumption-includes-(profile|texture|loss)$/,
};

test('every code has words and all words have a code', () => {
  const text = Object.entries(sources)
    .filter(([path]) => !/\.(test|prop)\.ts$/.test(path))
    .map(([, source]) => source)
    .join('\n');
  const used = new Set(
    [...text.matchAll(/'((?:system|quantities|catalogue)-[a-z-]+)'/g)].map((found) => found[1] as string),
  );
  // Ids of entries that only look like codes.
  for (const id of ['system-least', 'system-most']) used.delete(id);
  const worded = new Set([...Object.keys(systemWords), ...Object.keys(quantitiesWords)]);
  for (const code of used) expect(worded.has(code), code).toBe(true);
  for (const code of worded) {
    const known = used.has(code) || Object.values(FAMILIES).some((family) => family.test(code));
    expect(known, code).toBe(true);
  }
  const size = (family: RegExp): number => [...worded].filter((code) => family.test(code)).length;
  expect(Object.values(FAMILIES).map(size)).toEqual([21, 4, 10, 12, 2, 3]);
});
