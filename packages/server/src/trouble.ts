import { type Issue, issuesOf, voice } from '@slabwright/core';
import type { Context } from 'hono';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import type { z } from 'zod';

/** What every refusal answers with: what is wrong as data, and the same in words. */
export interface Trouble {
  readonly issues: readonly Issue[];
  readonly messages: readonly string[];
}

const words = voice('en', { locale: 'en-US', units: 'metric' }, {});

export const troubleOf = (issues: readonly Issue[]): Trouble => ({ issues, messages: issues.map(words.sayIssue) });

/** Ends a call with a status and what the caller can do about it. */
export class Refused extends Error {
  override readonly name = 'Refused';
  readonly status: ContentfulStatusCode;
  readonly issues: readonly Issue[];
  constructor(status: ContentfulStatusCode, issues: readonly Issue[]) {
    super(issues.map(({ code }) => code).join(', '));
    this.status = status;
    this.issues = issues;
  }
}

/** Answers a call whose address or body does not have the shape its route states. */
export function answerMisshapen(
  result: { readonly success: boolean; readonly target: string; readonly data?: unknown; readonly error?: z.ZodError },
  c: Context,
): Response | undefined {
  if (result.success || result.error === undefined) return undefined;
  const before = result.target === 'json' ? [] : [result.target];
  const issues = issuesOf(result.error, result.data).map((issue) => ({ ...issue, path: [...before, ...issue.path] }));
  return c.json(troubleOf(issues), 400);
}
