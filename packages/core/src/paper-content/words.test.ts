import { describe, expect, test } from 'vitest';
import papers from '../words/en/papers.json' with { type: 'json' };
import { MESSAGES } from '../words/messages.ts';

/** Sources as text, so that a code without words, or words without a code, cannot pass. */
const files = import.meta.glob(['./**/*.ts', '../steps/{coats,safety}/*.ts'], {
  query: '?raw',
  import: 'default',
  eager: true,
}) as Readonly<Record<string, string>>;
const sources = Object.entries(files).filter(([path]) => !/\.(test|prop)\.ts$/.test(path));
const text = sources.map(([, source]) => source).join('\n');

const CODE = /'((?:paper|proposal|buying|crew|safety|annex)-[A-Za-z0-9-]+)'/g;
/** Ids, kinds and file parts that only look like codes. */
const NOT_CODES = new Set(['crew-sheet', 'buying-list', 'safety-sheet']);
const used = new Set(
  [...text.matchAll(CODE)].map((found) => found[1] as string).filter((code) => !NOT_CODES.has(code)),
);

/** Codes put together in the source: the fixed beginning, with a code of that family from anywhere in the words. */
const FAMILIES = [...text.matchAll(/[`@]((?:paper|proposal|buying|crew|safety|annex)-[a-z-]*)\$\{/g)].map(
  (found) => found[1] as string,
);
/** Called with a beginning, and ends given beside it. */
const STEMS = [...text.matchAll(/lines\('([a-z-]+)', \[([^\]]*)\]\)/g)].flatMap((found) =>
  [...(found[2] as string).matchAll(/'([a-z-]+)'/g)].map((end) => `${found[1]}-${end[1]}`),
);
const SEEN = [...used].filter((code) => /^safety-(ignition-seen|adjoining|air-returns|occupied)$/.test(code));

describe('words of the papers', () => {
  test('every code that stands in the source has English words', () => {
    const ends = new Set(['safety-air-returns', 'safety-occupied', ...stemsOf()]);
    const missing = [...used, ...STEMS].filter((code) => !MESSAGES.en.has(code) && !ends.has(code));
    expect(missing).toEqual([]);
    expect(used.size).toBeGreaterThan(200);
  });

  test('every word has a code', () => {
    const known = new Set([...used, ...STEMS]);
    const spare = Object.keys(papers).filter(
      (code) =>
        !known.has(code) &&
        !known.has(code.replace(/-one$/, '')) &&
        !FAMILIES.some((family) => code.startsWith(family) && family.length > 'paper-'.length) &&
        !/^paper-(stem-wall|cove|steps)$/.test(code) &&
        !SEEN.some((stem) => code.startsWith(`${stem}-`)),
    );
    expect(spare).toEqual([]);
  });
});

/** Beginnings that `lines(...)` completes are no codes of their own. */
function stemsOf(): readonly string[] {
  return [...text.matchAll(/lines\('([a-z-]+)', \[/g)].map((found) => found[1] as string);
}

/** What crew sheet and safety sheet can show, by family. A new code of one of them needs its Spanish at once. */
const SHOWN_IN_SPANISH: readonly RegExp[] = [
  /^(crew|task|verdict)-/,
  /^safety-(?!missing-solvent-changes|air-assumed|pressure-assumed)/,
  /^paper-(?!chemistry-|stem-wall|cove|steps|(title|foot)-(proposal|buying-list|working-annex))/,
  /^hours-(no-|sheet-silent|margin-(start|night)|read-again|slab-|air-|trend-|sun-|night-not-read|coats-|recoat-|two-people|one-pair|hands-lift|use-)/,
  /^preparation-(work|bond|grit|tool-mass|power|dust|drop|drops|oil|tape|profile|pull-off|wets-slab|method-does-not-fit)(-|$)/,
  /^survey-(hazard|substance|cover|service|drains|pressure-from-below|sign-)/,
  /^survey-(floor-not-described|cover-not-known)/,
  /^system-(film-(dry|wet)-(thin|thick)|film-vertical-thick|moisture-above|thinner-(forbidden|too-much)|bond-(mean|single)-below|concrete-too-young|profile-conflict)/,
  /^thinner-(old-gauge|open-time|entrapment)/,
  /^system-climate-[a-z]+-[a-z]+-always/,
];

describe('Spanish of crew sheet and safety sheet', () => {
  test('is there for every code the two can show', () => {
    const shown = [...MESSAGES.en.keys()].filter((code) => SHOWN_IN_SPANISH.some((family) => family.test(code)));
    expect(shown.filter((code) => !MESSAGES.es.has(code))).toEqual([]);
    expect(shown.length).toBeGreaterThan(350);
  });

  test('names every kind of work the preparation knows', () => {
    const works = [...MESSAGES.en.keys()].filter((code) => code.startsWith('preparation-work-'));
    expect(works.filter((code) => !MESSAGES.en.has(code.replace('preparation-work', 'task')))).toEqual([]);
  });

  test('has no code that English lacks, and the same placeholders', () => {
    const holes = (message: string): string =>
      [...new Set([...message.matchAll(/\{([A-Za-z]+)\s*[,}]/g)].map((found) => found[1]))].sort().join(' ');
    for (const [code, spanish] of MESSAGES.es) {
      const english = MESSAGES.en.get(code);
      expect(english, code).toBeDefined();
      expect(holes(spanish), code).toBe(holes(english ?? ''));
    }
  });

  test('never says that something is safe or compliant', () => {
    for (const message of [...MESSAGES.es.values(), ...Object.values(papers)]) {
      expect(message).not.toMatch(/\bsafe\b|compliant|\bsegur[oa]s?\b|\bcumple/i);
    }
  });
});

test('no sentence is born in the papers or the steps behind them', () => {
  const prose = sources.flatMap(([path, source]) => {
    const bare = source.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '').replace(/new Error\([^)]*\)/g, '');
    return [...bare.matchAll(/'([^'\n]*)'|`([^`\n]*)`/g)]
      .map((found) => found[1] ?? found[2] ?? '')
      .filter((literal) => /[a-z]{2,}[ ,]+[a-z]{2,}/i.test(literal) && !/[$/]/.test(literal))
      .map((literal) => `${path}: ${literal}`);
  });
  expect(prose.filter((one) => !ALLOWED.test(one))).toEqual([]);
});

/** Choices of the files that are two words: they are keys, not text. */
const ALLOWED =
  /: (not known|data sheet|own test|firm's rate|not solid|recoat (from|until|opens|closes)|pot life|open time|broadcast until|stop line|stem wall)$/;
