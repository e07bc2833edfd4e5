/**
 * Text as it is searched: lower case, without accents or control characters, one space between words.
 * `Señor MÜLLER` and `senor muller` find each other.
 */
export function searchForm(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{Mark}+/gu, '')
    .toLowerCase()
    .replace(/[\p{Control}\p{White_Space}]+/gu, ' ')
    .trim();
}

/** The words of a query, each of which must occur. At most 20: a longer query is a pasted page, not a search. */
export function searchWords(text: string): readonly string[] {
  const words = searchForm(text).split(' ');
  return words.filter((word) => word !== '').slice(0, 20);
}
