import { ALL_FORMULAS, MESSAGES, SOURCES } from '@slabwright/core';
import PDFDocument from 'pdfkit';
import { expect, test } from 'vitest';
import { drawable, rememberWidths, type Weight } from './fonts.ts';
import { fontsFromNode } from './node-fonts.ts';

const files = await fontsFromNode();
const doc = new PDFDocument({ autoFirstPage: false, font: null as unknown as string });
doc.registerFont('regular', files.regular as unknown as ArrayBuffer);
doc.registerFont('bold', files.bold as unknown as ArrayBuffer);
const laidOut = (text: string, weight: Weight): number => doc.font(weight).fontSize(1000).widthOfString(text) / 1000;

/** Every word the papers may say: messages of both languages, equations, sources. */
const words = new Set(
  [
    ...[...MESSAGES.en.values(), ...MESSAGES.es.values()],
    ...[...ALL_FORMULAS.values()].flatMap(({ id, says, equation }) => [id, says, equation]),
    ...[...SOURCES.values()].flatMap(({ title, author = '' }) => [title, author]),
    'office affluent waffle fjord ½ ⅛ 12 ft 6 1/2 in 3,141.59 Öl año ±0.3 °F²·h⁻¹ AVAToTyWe…',
  ]
    .join(' ')
    .split(/\s+/)
    .map(drawable),
);

test('a word is as wide as its signs and pairs say: the face lays no word out otherwise', () => {
  expect(words.size).toBeGreaterThan(3000);
  for (const weight of ['regular', 'bold'] as const) {
    const width = rememberWidths(laidOut);
    for (const word of words) expect(width(word, weight), word).toBeCloseTo(laidOut(word, weight), 9);
  }
});
