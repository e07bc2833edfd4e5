import { jobSchema } from '@slabwright/core';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { FLOOR_PARTS } from './floor-sections.ts';
import { OPTIONS } from './option-section.ts';
import { fieldsOf } from './spec.ts';
import { SURVEY_SECTIONS } from './survey-sections.ts';

/** Every leaf of a schema as a path; items of lists under `[]`. */
export function leavesOf(schema: unknown, before: readonly string[] = []): readonly string[] {
  const node = schema as {
    properties?: Record<string, unknown>;
    items?: unknown;
    anyOf?: readonly unknown[];
    prefixItems?: unknown;
  };
  if (node.properties) {
    return Object.entries(node.properties).flatMap(([key, inner]) => leavesOf(inner, [...before, key]));
  }
  const items = node.items as { properties?: unknown } | undefined;
  if (items && typeof items === 'object' && items.properties) return leavesOf(items, [...before, '[]']);
  return [before.join('.')];
}

/** Written by the drawing, by the file itself, or by a table beside the forms. */
const ELSEWHERE = [
  /\.id$/,
  /^id$/,
  /^schema$/,
  /^areas\.\[\]\.(outline|tape|name)/,
  /^place\.(vocLimits|exempt|season)/,
];

test('every field of a job is asked somewhere, and nothing is asked that no job holds', () => {
  const held = leavesOf(z.toJSONSchema(jobSchema(), { io: 'input' }));
  const asked = [
    ...[...SURVEY_SECTIONS, OPTIONS].flatMap(({ parts }) => fieldsOf(parts)),
    ...fieldsOf(FLOOR_PARTS, ['areas', '[]']),
  ];
  const missing = held.filter((path) => !asked.includes(path) && !ELSEWHERE.some((rule) => rule.test(path)));
  const unknown = asked.filter((path) => !held.includes(path));
  expect({ missing, unknown }).toEqual({ missing: [], unknown: [] });
});
