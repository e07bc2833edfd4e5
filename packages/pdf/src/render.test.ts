import type { Block, Content, Entry } from '@slabwright/core';
import { describe, expect, test } from 'vitest';
import { fontsFromNode } from './node-fonts.ts';
import { type RenderOptions, renderPaper } from './render.ts';
import { ENTRIES, paper, samplePaper, testVoice, text } from './testing/papers.ts';
import { readPdf } from './testing/read-pdf.ts';

const fonts = await fontsFromNode();
const letter: RenderOptions = { size: 'letter', fonts };
// The face draws micro and mu with one glyph, so both come back as mu.
const plain = (words: string): string => words.replaceAll('\u00a0', ' ').replaceAll('µ', 'μ').replace(/\s+/g, ' ');
const paragraph = (...content: readonly Content[]): Block => ({ kind: 'paragraph', content });

describe('a proposal', async () => {
  const bytes = await renderPaper(samplePaper('proposal'), testVoice('imperial'), letter);
  const read = await readPdf(bytes);
  const words = plain(read.pages.map((page) => page.text).join(' '));

  test('can be read, copied and searched', () => {
    for (const said of [
      'Your garage floor, ground',
      '435 ft²',
      '$4,958.00',
      'crack, 9 ft 2 in',
      'Colored flake',
      'For the owner, date',
    ]) {
      expect(words).toContain(said);
    }
  });

  test('says every verdict in words beside its mark', () => {
    for (const word of ['Go', 'With care', 'Stop', 'Not known']) expect(words).toContain(word);
  });

  test('has a title, a language and a structure tree', () => {
    expect(read.title).toBe('Proposal 26-041');
    expect(read.language).toBe('en-US');
    expect(read.tagged).toBe(true);
    const roles = new Set(read.pages.flatMap((page) => page.roles));
    for (const role of ['H1', 'H2', 'P', 'Figure', 'Table', 'TR', 'TH', 'TD', 'L', 'LI']) expect(roles).toContain(role);
  });

  test('describes its drawings for those who hear the paper', () => {
    const alts = read.pages.flatMap((page) => page.alts).map(plain);
    expect(alts.some((alt) => alt.includes('Garage, 435 ft²') && alt.includes('house door, taped shut'))).toBe(true);
    expect(alts.some((alt) => alt.startsWith('Cut through the floor'))).toBe(true);
  });

  test('numbers its pages and keeps head and foot out of the text that is read', () => {
    expect(read.pages).toHaveLength(2);
    read.pages.forEach((page, index) => {
      const seen = plain(page.artifacts);
      expect(seen).toContain(`page ${index + 1} of 2`);
      expect(seen).toContain('7F2C 91');
    });
  });

  test('carries both weights of its face and no other', () => {
    const file = new TextDecoder('latin1').decode(bytes);
    const faces = [...file.matchAll(/\/BaseFont \/(\S+)/g)].map(([, name = '']) => name.replace(/^[A-Z]{6}\+/, ''));
    expect(new Set(faces)).toEqual(new Set(['IBMPlexSans-Regular', 'IBMPlexSans-Bold']));
    expect(file.match(/\/FontFile2 /g)).toHaveLength(2);
    expect(file.startsWith('%PDF-1.7')).toBe(true);
  });

  test('is the same file every time', async () => {
    const again = await renderPaper(samplePaper('proposal'), testVoice('imperial'), letter);
    expect(again).toEqual(bytes);
  });
});

test.each([
  ['letter', 612, 792],
  ['a4', 595.28, 841.89],
] as const)('stands on %s', async (size, width, height) => {
  const read = await readPdf(await renderPaper(samplePaper('crew-sheet'), testVoice('metric'), { size, fonts }));
  for (const page of read.pages) {
    expect(page.width).toBeCloseTo(width, 1);
    expect(page.height).toBeCloseTo(height, 1);
  }
});

test('speaks metric where the reader does', async () => {
  const read = await readPdf(await renderPaper(samplePaper('proposal'), testVoice('metric'), letter));
  const words = plain(read.pages.map((page) => page.text).join(' '));
  expect(words).toContain('40.41 m²');
  expect(words).not.toContain('435 ft²');
});

test('sets Spanish letters, fractions and signs of formulas', async () => {
  const signs = 'áéíóúüñ ÁÉÍÓÚÜÑ ¿Qué? ¡Alto! ½ ¼ ¾ ⅛ ⅜ ⅝ ⅞ m² m³ 21 °C 10 µm ≤ ≥ → − – — × ± √ Σ Δ λ π';
  const made = paper([paragraph({ name: signs })], { language: 'es' });
  const read = await readPdf(await renderPaper(made, testVoice('metric', 'es'), letter));
  expect(read.language).toBe('es-US');
  const [page] = read.pages;
  expect(plain(page?.text ?? '')).toContain(plain(signs));
  expect(plain(page?.artifacts ?? '')).toContain('página 1 de 1');
});

test('shows an override on every page', async () => {
  const blocks: readonly Block[] = [paragraph({ name: 'one' }), { kind: 'page-break' }, paragraph({ name: 'two' })];
  const made = paper(blocks, { overrides: [text('Laid over a stop for moisture on the word of I. Orrell, 12 May.')] });
  const read = await readPdf(await renderPaper(made, testVoice('imperial'), letter));
  expect(read.pages).toHaveLength(2);
  for (const page of read.pages) expect(plain(page.text)).toContain('on the word of I. Orrell');
});

test('repeats the head of a table that goes on, for the eye only', async () => {
  const rows = Array.from({ length: 90 }, (_, index): readonly Content[] => [
    { name: `row ${index + 1}` },
    { entry: 'price' },
  ]);
  const made = paper([
    { kind: 'table', columns: [{ head: text('what it is') }, { head: text('cost'), align: 'right' }], rows },
  ]);
  const read = await readPdf(await renderPaper(made, testVoice('imperial'), letter));
  expect(read.pages.length).toBeGreaterThan(1);
  read.pages.forEach((page, index) => {
    expect(plain(page.text)).toContain('what it is');
    if (index > 0) expect(plain(page.artifacts)).toContain('what it is');
  });
  expect(plain(read.pages.map((page) => page.text).join(' '))).toContain('row 90');
});

test('never leaves a heading alone at the foot of a page', async () => {
  for (let lines = 20; lines < 60; lines += 3) {
    const blocks: Block[] = Array.from({ length: lines }, (_, index) => paragraph({ name: `line ${index}` }));
    blocks.push({ kind: 'heading', text: text('THE HEADING') }, paragraph({ name: 'what follows it' }));
    const read = await readPdf(await renderPaper(paper(blocks), testVoice('imperial'), letter));
    const page = read.pages.find((one) => one.text.includes('THE HEADING'));
    expect(page?.text).toContain('what follows it');
  }
});

test('never leaves the lines to sign on alone on a page', async () => {
  for (let lines = 28; lines < 46; lines += 2) {
    const blocks: Block[] = Array.from({ length: lines }, (_, index) => paragraph({ name: `line ${index}` }));
    blocks.push({ kind: 'signatures', fields: [text('FOR THE FIRM')] });
    const read = await readPdf(await renderPaper(paper(blocks), testVoice('imperial'), letter));
    expect(read.pages.find((one) => one.text.includes('FOR THE FIRM'))?.text).toContain(`line ${lines - 1}`);
  }
});

test('cuts a word that is wider than the page instead of writing past it', async () => {
  const long = 'x'.repeat(600);
  const blocks: readonly Block[] = [
    { kind: 'headline', text: text(long) },
    { kind: 'boxed', lines: [text(long)], strong: true },
    { kind: 'facts', rows: [{ label: { name: long }, value: { name: long }, note: { name: long } }] },
    {
      kind: 'table',
      columns: [{ head: text(long) }, { head: text('b'), align: 'right' }],
      rows: [[{ name: long }, { entry: 'price' }]],
    },
    { kind: 'list', marks: 'box', lines: [{ name: long }] },
  ];
  const read = await readPdf(await renderPaper(paper(blocks), testVoice('imperial'), letter));
  const count = read.pages.map((page) => page.text.match(/x/g)?.length ?? 0).reduce((sum, one) => sum + one, 0);
  expect(count).toBe(8 * 600);
});

test('texts longer than a page go on over the next ones, whatever holds them', async () => {
  const long = Array.from({ length: 1500 }, (_, index) => `w${index}`).join(' ');
  const short = text('short');
  const blocks: readonly Block[] = [
    { kind: 'boxed', lines: [text(long)] },
    { kind: 'verdict', word: 'stop', title: short, lines: [text(long)] },
    { kind: 'facts', rows: [{ label: { name: long }, value: { entry: 'price' } }] },
    {
      kind: 'table',
      columns: [{ head: short }, { head: short, align: 'right' }],
      rows: [[{ name: long }, { entry: 'price' }]],
    },
    { kind: 'list', marks: 'dash', lines: [{ name: long }] },
    paragraph({ name: long }),
  ];
  for (const block of blocks) {
    const read = await readPdf(await renderPaper(paper([block]), testVoice('imperial'), letter));
    expect(
      read.pages
        .map((page) => page.text)
        .join(' ')
        .match(/w\d+/g)?.length,
      block.kind,
    ).toBeGreaterThanOrEqual(1500);
    const lowest = Math.min(...read.pages.map((page) => page.lowest));
    expect(lowest, block.kind).toBeGreaterThan(30);
  }
});

test('sets hostile text as text', async () => {
  const hostile = ') Tj ET \\ <</Type>> \u202eabc\u0000\t😀 漢';
  const made = paper([paragraph({ name: hostile })]);
  const read = await readPdf(await renderPaper(made, testVoice('imperial'), letter));
  expect(plain(read.pages[0]?.text ?? '')).toContain(') Tj ET \\ <</Type>>');
});

test('an empty paper is one page with its head and foot', async () => {
  const read = await readPdf(await renderPaper(paper([]), testVoice('imperial'), letter));
  expect(read.pages).toHaveLength(1);
  expect(plain(read.pages[0]?.text ?? '')).toContain('page 1 of 1');
});

test('an annex prints equation, numbers and source of a figure, and where a reading was taken', async () => {
  const figure: Entry = {
    kind: 'figure',
    id: 'film.wet',
    value: 0.0003,
    unit: 'm',
    formula: 'film/wet-from-dry',
    inputs: { dryFilm: 'film.dry', volumeSolids: 'film.solids' },
    source: 'conservation-of-solids',
    outside: [],
    shows: 'film',
  };
  const dry: Entry = { kind: 'given', id: 'film.dry', value: 0.00025, unit: 'm', origin: 'data sheet', shows: 'film' };
  const solids: Entry = {
    kind: 'given',
    id: 'film.solids',
    value: 0.85,
    unit: '1',
    origin: 'data sheet',
    shows: 'share',
  };
  const entries = { ...ENTRIES, [figure.id]: figure, [dry.id]: dry, [solids.id]: solids };
  const blocks: readonly Block[] = ['film.wet', 'moisture'].map((entry) => ({ kind: 'working', entries: [entry] }));
  const made = paper(blocks, { kind: 'working-annex' });
  const read = await readPdf(await renderPaper(made, testVoice('metric', 'en', entries), letter));
  const words = plain(read.pages[0]?.text ?? '');
  for (const said of ['film.wet', '300 μm', '85 %', 'source-cited-calc', 'test point 2']) {
    expect(words).toContain(said);
  }
});

test('a paper that names an entry the plan does not hold is refused', async () => {
  const made = paper([paragraph({ entry: 'nobody.knows' })]);
  await expect(renderPaper(made, testVoice('imperial'), letter)).rejects.toThrow('nobody.knows');
});
