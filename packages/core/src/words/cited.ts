import { SOURCES, type Source } from '../data/sources.ts';
import type { Said } from '../kernel/said.ts';

/** Characters of a title that still tell a person which book it is. */
const SHORT_TITLE = 56;

/** A title cut at a word. */
function shortened(title: string): string {
  if (title.length <= SHORT_TITLE) return title;
  const cut = title.slice(0, SHORT_TITLE);
  return `${cut.slice(0, Math.max(cut.lastIndexOf(' '), 20)).replace(/[,;:]$/, '')}…`;
}

const joined = (parts: readonly (string | number | undefined)[]): string =>
  parts.filter((part) => part !== undefined && part !== '').join(', ');

const code = ({ mark }: Source): string => `source-cited-${mark.toLowerCase()}`;

/**
 * A source in short, as it stands beside a figure: who, what, when, where in it, and how it was seen. Undefined under a
 * key the bibliography does not hold. Addresses of pages stay in the bibliography.
 */
export function citedShort(key: string, locator?: string): Said | undefined {
  const source = SOURCES.get(key);
  if (!source) return undefined;
  const { author, publisher, title, year } = source;
  return { code: code(source), names: { cited: joined([author ?? publisher, shortened(title), year, locator]) } };
}

/** A source in full, for the list at the end of a paper. */
export function citedInFull(key: string): Said | undefined {
  const source = SOURCES.get(key);
  if (!source) return undefined;
  const { author, publisher, title, year } = source;
  return { code: code(source), names: { cited: joined([author, title, publisher, year]) } };
}
