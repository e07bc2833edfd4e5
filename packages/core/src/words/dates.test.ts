import { expect, test } from 'vitest';
import { datesSpoken } from './dates.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const en = (text: string): string => plain(datesSpoken(text, 'en'));

test('a date with its weekday, in both languages (a calendar on the wall)', () => {
  expect(en('2026-05-12')).toBe('Tue 12 May 2026');
  expect(plain(datesSpoken('2026-05-12', 'es'))).toBe('mar 12 may 2026');
  expect(en('2024-02-29')).toBe('Thu 29 Feb 2024');
  expect(plain(datesSpoken('2026-09-05', 'es'))).toBe('sáb 5 sept 2026');
});

test('a moment of the site keeps its time; seconds and offset are not for a wall', () => {
  expect(en('from 2026-05-13 14:12 on')).toBe('from Wed 13 May 2026 14:12 on');
  expect(en('2026-05-13T14:12:30-06:00')).toBe('Wed 13 May 2026 14:12');
});

test('what was just said is not said again', () => {
  expect(en('2026-05-13 14:12, last from 2026-05-13 14:45, 2026-05-14 00:32 if slow')).toBe(
    'Wed 13 May 2026 14:12, last from 14:45, Thu 14 May 00:32 if slow',
  );
  expect(en('2026-12-31 to 2027-01-02')).toBe('Thu 31 Dec 2026 to Sat 2 Jan 2027');
});

test('what is no date stays as it was written', () => {
  for (const text of ['2026-02-31', '26-017', '12345-05-12', '2026-05-12-7', '2026-13-01']) expect(en(text)).toBe(text);
});

test('a moment of the year of the plan needs no year; a date keeps it', () => {
  const told = (text: string): string => plain(datesSpoken(text, 'en', '2026'));
  expect(told('not before 2026-05-13 14:12')).toBe('not before Wed 13 May 14:12');
  expect(told('2026-05-13')).toBe('Wed 13 May 2026');
  expect(told('2027-01-04 07:00')).toBe('Mon 4 Jan 2027 07:00');
});

test('the date of a document needs no weekday', () => {
  expect(en('by Base B, sheet 4, 2025-11-03')).toBe('by Base B, sheet 4, 3 Nov 2025');
});
