import { expect, test } from 'vitest';
import { columnWidths } from './column-widths.ts';
import { figureParts } from './content.ts';
import { drawable } from './fonts.ts';

test.each([
  ['435\u00a0ft²', '435', 'ft²'],
  ['76\u00a0%\u00a0RH', '76', '%\u00a0RH'],
  ['9\u00a0ft\u00a02\u00a0in', '9\u00a0ft\u00a02', 'in'],
  ['$4,958.00', '$4,958.00', ''],
  ['−0.5\u00a0°C', '−0.5', '°C'],
  ['1.234,5\u00a0m²', '1.234,5', 'm²'],
  ['not known', 'not known', ''],
])('%s is a figure and its unit', (text, number, unit) => {
  expect(figureParts(text)).toEqual({ number, unit });
});

test('signs the face does not draw are spelled with signs it does', () => {
  expect(drawable('m⁻¹ 10⁻²³ ℃ a⋅b')).toBe('m^−1 10^−23 °C a·b');
  expect(drawable('a\tb\u202ec\r\nd')).toBe('a b c\nd');
});

test('columns fill their room and none is narrower than its longest word while all fit', () => {
  const widths = columnWidths(
    [
      { least: 40, most: 300 },
      { least: 30, most: 30 },
      { least: 10, most: 20, share: 0.2 },
    ],
    320,
    10,
  );
  expect(widths.reduce((sum, width) => sum + width, 0)).toBeCloseTo(300, 9);
  expect(widths[0]).toBeGreaterThanOrEqual(40);
  expect(widths[1]).toBeCloseTo(30, 9);
  expect(widths[2]).toBeCloseTo(60, 9);
});

test('columns that ask for more than there is shrink together', () => {
  const widths = columnWidths(
    [
      { least: 300, most: 400 },
      { least: 100, most: 100 },
    ],
    210,
    10,
  );
  expect(widths[0]).toBeCloseTo(150, 9);
  expect(widths[1]).toBeCloseTo(50, 9);
});
