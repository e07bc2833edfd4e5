import { InvalidInput } from './errors.ts';
import type { Draft, Entry } from './port.ts';

/** Sizes the store takes. A job of 2,000 m² with all its readings is well under 1 MB, so these leave room. */
export const limits = {
  idCharacters: 200,
  titleCharacters: 500,
  searchCharacters: 100_000,
  /** Of the body as JSON text. */
  bodyCharacters: 16 * 1024 * 1024,
  bodyDepth: 200,
  changesInTransaction: 10_000,
} as const;

const kindPattern = /^[a-z][a-z0-9-]{0,39}$/;
// Ids take part in sort keys. Visible ASCII sorts alike in SQLite (bytes) and in a browser (UTF-16 units).
const idPattern = /^[\x21-\x7e]{1,200}$/;
const instantPattern = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z$/;
const loneSurrogate = /\p{Surrogate}/u;

/** @throws InvalidInput unless `kind` is a lower-case word with dashes, 1 to 40 characters. */
export function checkKind(kind: unknown): void {
  if (typeof kind !== 'string' || !kindPattern.test(kind)) {
    throw new InvalidInput('kind', kind, 'a lower-case word with dashes, 1 to 40 characters');
  }
}

/** @throws InvalidInput unless `id` is 1 to 200 visible ASCII characters. */
export function checkId(id: unknown, field = 'id'): void {
  if (typeof id !== 'string' || !idPattern.test(id)) {
    throw new InvalidInput(field, id, `1 to ${limits.idCharacters} visible ASCII characters without spaces`);
  }
}

/** @throws InvalidInput unless `instant` is a real UTC instant to the millisecond. */
export function checkInstant(instant: unknown, field: string): void {
  const real =
    typeof instant === 'string' &&
    instantPattern.test(instant) &&
    !Number.isNaN(Date.parse(instant)) &&
    new Date(instant).toISOString() === instant;
  if (!real) throw new InvalidInput(field, instant, 'a UTC instant such as 2026-03-01T08:30:00.000Z');
}

/** @throws InvalidInput unless `revision` is a whole number from `least` up. */
export function checkRevision(revision: unknown, field: string, least: number): void {
  if (!Number.isSafeInteger(revision) || (revision as number) < least) {
    throw new InvalidInput(field, revision, `a whole number from ${least} up`);
  }
}

/** @throws InvalidInput unless `limit` is a whole number from 1 to `most`. */
export function checkLimit(limit: unknown, most: number): void {
  if (!Number.isSafeInteger(limit) || (limit as number) < 1 || (limit as number) > most) {
    throw new InvalidInput('limit', limit, `a whole number from 1 to ${most}`);
  }
}

/** @throws InvalidInput naming the first field of the draft that cannot be stored. Returns the body as JSON text. */
export function checkDraft(draft: Draft): string {
  checkKind(draft.kind);
  checkId(draft.id);
  checkInstant(draft.updatedAt, 'updatedAt');
  checkText(draft.title, 'title', limits.titleCharacters);
  checkText(draft.searchText, 'searchText', limits.searchCharacters);
  return bodyText(draft.body);
}

/** @throws InvalidInput naming the first field of the entry that cannot be stored. Returns the body as JSON text. */
export function checkEntry(entry: Entry): string {
  checkId(entry.jobId, 'jobId');
  checkId(entry.id);
  checkInstant(entry.at, 'at');
  return bodyText(entry.body);
}

/** The body as JSON text. Refuses what JSON would drop or change without a word: undefined, NaN, dates, functions. */
function bodyText(body: unknown): string {
  checkJson(body, 'body', 0);
  const text = JSON.stringify(body);
  if (text.length > limits.bodyCharacters) {
    throw new InvalidInput('body', text, `at most ${limits.bodyCharacters} characters of JSON text`);
  }
  return text;
}

function checkText(text: unknown, field: string, most: number): void {
  if (typeof text !== 'string' || text.length > most || loneSurrogate.test(text)) {
    throw new InvalidInput(field, text, `well-formed text of at most ${most} characters`);
  }
}

function checkJson(value: unknown, path: string, depth: number): void {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return;
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new InvalidInput(path, value, 'a finite number');
    return;
  }
  // The depth also stops a body that contains itself.
  if (depth >= limits.bodyDepth) throw new InvalidInput(path, value, `at most ${limits.bodyDepth} levels deep`);
  if (Array.isArray(value)) {
    for (let index = 0; index < value.length; index++) checkJson(value[index], `${path}[${index}]`, depth + 1);
    return;
  }
  if (!isPlainObject(value)) {
    throw new InvalidInput(path, value, 'plain JSON: null, true, false, number, text, list or object');
  }
  for (const [key, inner] of Object.entries(value)) checkJson(inner, `${path}.${key}`, depth + 1);
}

function isPlainObject(value: unknown): value is Record<string, unknown> {
  if (typeof value !== 'object' || value === null) return false;
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === null || Object.getPrototypeOf(prototype) === null;
}
