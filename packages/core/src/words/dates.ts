import type { Language } from './messages.ts';

/**
 * Dates as a reader writes them. Inside the program a date is `2026-05-13` and a moment of the site `2026-05-13 14:12`;
 * on paper nobody should wonder which of two figures is the month, and the weekday is what a crew goes by.
 */

const NAMES: Readonly<Record<Language, { readonly days: readonly string[]; readonly months: readonly string[] }>> = {
  en: {
    days: ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'],
    months: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
  },
  es: {
    days: ['dom', 'lun', 'mar', 'mié', 'jue', 'vie', 'sáb'],
    months: ['ene', 'feb', 'mar', 'abr', 'may', 'jun', 'jul', 'ago', 'sept', 'oct', 'nov', 'dic'],
  },
};

const NO_BREAK = '\u00a0';
const DATE =
  /(?<![\d-])(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}:\d{2})(?::\d{2}(?:\.\d+)?)?(?:Z|[+-]\d{2}:\d{2})?)?(?![\d-])/g;

/** The parts of a date the calendar holds; `2026-02-31` is no date and stays as it was written. */
function onCalendar(year: number, month: number, day: number): Date | undefined {
  const found = new Date(Date.UTC(year, month - 1, day));
  return found.getUTCMonth() === month - 1 && found.getUTCDate() === day ? found : undefined;
}

/** The date of a document, `Base B, sheet 4, 2025-11-03`: nobody goes by its weekday. */
const isCited = (text: string, at: number, time: string | undefined): boolean =>
  time === undefined && text.slice(0, at).endsWith(', ');

/**
 * `Wed 13 May 2026 14:12` for every date or moment in a text. Within one text a year that was just said is not said
 * again, and a moment on the day just named keeps only its time: `14:12, last from 14:45`. Moments of `thisYear`, the
 * year a plan was made in, are told by weekday and day alone.
 */
export function datesSpoken(text: string, language: Language, thisYear?: string): string {
  let before: { readonly year: string; readonly date: string } | undefined;
  const named = (written: string, ...found: readonly unknown[]): string => {
    const [year, month, day, time, at] = found as [string, string, string, string | undefined, number];
    const date = spoken(year, month, day, time, isCited(text, at, time));
    return date ?? written;
  };
  const spoken = (year: string, month: string, day: string, time: string | undefined, cited: boolean) => {
    const found = onCalendar(Number(year), Number(month), Number(day));
    if (!found) return undefined;
    const date = `${year}-${month}-${day}`;
    const said = before;
    before = { year, date };
    if (time !== undefined && said?.date === date) return time;
    const { days, months } = NAMES[language];
    const known = said?.year === year || (time !== undefined && year === thisYear);
    const parts = [
      ...(cited ? [] : [days[found.getUTCDay()]]),
      `${found.getUTCDate()}`,
      months[found.getUTCMonth()],
      ...(known && !cited ? [] : [year]),
      ...(time === undefined ? [] : [time]),
    ];
    return parts.join(NO_BREAK);
  };
  return text.replace(DATE, named);
}
