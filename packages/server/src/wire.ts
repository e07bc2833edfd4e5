import type { Entry, StoredDocument } from '@slabwright/store';
import type { Context, TypedResponse } from 'hono';
import type { JSONValue } from 'hono/utils/types';

/** Stored things as the router's types have JSON: the same, without the promise to leave them as they are. */
export const wireDocument = (document: StoredDocument) => ({ ...document, body: document.body as JSONValue });
export const wireEntry = (entry: Entry) => ({ ...entry, body: entry.body as JSONValue });

/** An answer whose JSON text is at hand already; `T` says what it holds. */
export function jsonText<T>(
  c: Context,
  text: string,
  headers: Readonly<Record<string, string>> = {},
): Response & TypedResponse<T, 200, 'json'> {
  const response = c.body(text, 200, { 'content-type': 'application/json', ...headers });
  return response as unknown as Response & TypedResponse<T, 200, 'json'>;
}
