import {
  broughtUp,
  catalogueFrom,
  jobFrom,
  priceBookFrom,
  type Result,
  readJson,
  shareFrom,
  type Voice,
  weatherFrom,
} from '@slabwright/core';
import type { FileReport } from './api.ts';

const READERS: Readonly<Record<string, (value: unknown) => Result<unknown>>> = {
  job: jobFrom,
  catalogue: catalogueFrom,
  'price-book': priceBookFrom,
  weather: weatherFrom,
  share: shareFrom,
};

const textOf = (value: unknown, key: string): string => {
  if (value === null || typeof value !== 'object') return '';
  const found = (value as Record<string, unknown>)[key];
  return typeof found === 'string' ? found : '';
};

/** Looks at the `schema` line of a file to see what it is, and checks it whole. */
export function readFile(text: string, voice: Voice): FileReport {
  const json = readJson(text);
  const nothing = { title: '', id: '', value: null };
  if (!json.ok) return { kind: 'not known', ...nothing, issues: json.issues.map(voice.sayIssue) };
  const value = json.value;
  const kind = (textOf(value, 'schema').split('/')[0] ?? '').replace(/^slabwright\./, '');
  const now = kind === 'catalogue' ? broughtUp(value) : value;
  const head = { title: textOf(value, 'title') || textOf(value, 'id'), id: textOf(value, 'id'), value: now };
  if (kind === 'backup') return { kind, ...head, issues: [] };
  const reader = READERS[kind];
  if (!reader) {
    const tried = jobFrom(value);
    return { kind: 'not known', ...nothing, issues: tried.ok ? [] : tried.issues.map(voice.sayIssue) };
  }
  const result = reader(value);
  return { kind: kind as FileReport['kind'], ...head, issues: result.ok ? [] : result.issues.map(voice.sayIssue) };
}
