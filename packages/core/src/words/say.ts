import { IntlMessageFormat } from 'intl-messageformat';
import type { Entry } from '../kernel/entry.ts';
import type { Issue } from '../kernel/issue.ts';
import { pathText } from '../kernel/issue.ts';
import type { Said } from '../kernel/said.ts';
import { datesSpoken } from './dates.ts';
import { type Language, MESSAGES } from './messages.ts';
import { type Reader, show } from './show.ts';

/** Puts codes and entries into words for one reader. */
export interface Voice {
  readonly reader: Reader;
  readonly language: Language;
  say(said: Said): string;
  /** A text of the files as it stands, with the dates in it as this reader writes them. */
  plain(text: string): string;
  sayIssue(issue: Issue): string;
  /** Words of a key: a task, a method, a vertical. */
  word(key: string): string;
  show(id: string): string;
  entry(id: string): Entry;
}

const compiled = new Map<string, IntlMessageFormat>();

function formatOf(language: Language, locale: string, code: string): IntlMessageFormat {
  const key = `${locale} ${code}`;
  const known = compiled.get(key);
  if (known) return known;
  const text = MESSAGES[language].get(code);
  if (text === undefined) throw new Error(`no ${language} message for ${code}`);
  const format = new IntlMessageFormat(text, locale, undefined, { ignoreTag: true });
  compiled.set(key, format);
  return format;
}

const asText = (value: unknown): string => (Array.isArray(value) ? value.join('') : String(value));

export function voice(language: Language, reader: Reader, entries: Readonly<Record<string, Entry>>): Voice {
  const entry = (id: string): Entry => {
    const found = entries[id];
    if (!found) throw new Error(`a sentence needs the entry ${id}, which the plan does not hold`);
    return found;
  };
  const word = (key: string): string => asText(formatOf(language, reader.locale, key).format({}));
  const say = ({ code, figures = {}, names = {} }: Said): string => {
    const values: Record<string, string | number> = {};
    for (const [name, id] of Object.entries(figures)) {
      const found = entry(id);
      values[name] = show(found, reader);
      // Plain number beside the text, so that a message can choose its plural.
      if (found.kind === 'figure' || found.kind === 'given') values[`${name}N`] = found.value;
    }
    for (const [name, text] of Object.entries(names)) values[name] = text.startsWith('@') ? word(text.slice(1)) : text;
    return datesSpoken(asText(formatOf(language, reader.locale, code).format(values)), language, reader.year);
  };
  const plain = (text: string): string => datesSpoken(text, language, reader.year);
  const sayIssue = (issue: Issue): string => {
    const [least = '', most = ''] = issue.limits ?? [];
    return asText(
      formatOf(language, reader.locale, issue.code).format({
        path: pathText(issue.path),
        value: issue.value ?? '',
        least,
        most,
        choices: (issue.limits ?? []).join(', '),
        ...issue.names,
      }),
    );
  };
  // An entry of a plan never changes, and a working annex shows the same input under many figures.
  const shownBefore = new Map<string, string>();
  const shown = (id: string): string => {
    const known = shownBefore.get(id);
    if (known !== undefined) return known;
    const text = show(entry(id), reader);
    shownBefore.set(id, text);
    return text;
  };
  return { reader, language, say, plain, sayIssue, word, show: shown, entry };
}
