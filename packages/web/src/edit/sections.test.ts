import { catalogueSchema, jobSchema, priceBookSchema, voice } from '@slabwright/core';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { readFile } from '../worker/read-file.ts';
import { CATALOGUE_SECTIONS } from './catalogue-sections.ts';
import { FLOOR_PARTS } from './floor-sections.ts';
import { OPTIONS } from './option-section.ts';
import { PRICE_SECTIONS } from './price-sections.ts';
import { fieldsOf, type Section } from './spec.ts';
import { SURVEY_SECTIONS } from './survey-sections.ts';

/** Every leaf of a schema as a path; items of lists under `[]`. */
export function leavesOf(schema: unknown, before: readonly string[] = []): readonly string[] {
  const node = schema as {
    properties?: Record<string, unknown>;
    items?: unknown;
    anyOf?: readonly { readonly properties?: unknown }[];
    prefixItems?: readonly { readonly properties?: unknown }[];
  };
  if (node.properties) {
    return Object.entries(node.properties).flatMap(([key, inner]) => leavesOf(inner, [...before, key]));
  }
  // a pair of things of one kind, each with fields of its own
  if (node.prefixItems?.[0]?.properties) {
    return node.prefixItems.flatMap((inner, i) => leavesOf(inner, [...before, `${i}`]));
  }
  // one of several forms, each with fields of its own
  if (node.anyOf?.every(({ properties }) => properties)) {
    return [...new Set(node.anyOf.flatMap((inner) => leavesOf(inner, before)))];
  }
  const items = node.items as { properties?: unknown; anyOf?: readonly { properties?: unknown }[] } | undefined;
  const held =
    items && typeof items === 'object' && (items.properties || items.anyOf?.every(({ properties }) => properties));
  if (held) return leavesOf(items, [...before, '[]']);
  return [before.join('.')];
}

/** Written by the drawing, by the file itself, or by a table beside the forms. */
const ELSEWHERE = [/\.id$/, /^id$/, /^schema$/, /^areas\.\[\]\.(outline|tape|name)/];

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

test('what an older file says of bridged cracks stands in a field of the form, and is saved there', () => {
  const old = {
    schema: 'slabwright.catalogue/1',
    id: 'old',
    systems: [],
    products: [{ id: 'p', crackBridging: { class: 'A3', at: '-10 °C' } }],
  };
  const read = readFile(JSON.stringify(old), voice('en', { locale: 'en-US', units: 'metric' }, {}));
  const asked = CATALOGUE_SECTIONS.flatMap(({ parts }) => fieldsOf(parts));
  const held = (value: unknown, path: string): readonly string[] =>
    value !== null && typeof value === 'object'
      ? Object.entries(value).flatMap(([key, inner]) =>
          held(inner, [path, Array.isArray(value) ? '[]' : key].filter(Boolean).join('.')),
        )
      : [path];
  const fields = held(read.value, '').filter((path) => !ELSEWHERE.some((rule) => rule.test(path)));
  expect(fields).toEqual([
    'products.[].properties.[].what',
    'products.[].properties.[].method',
    'products.[].properties.[].value',
    'products.[].properties.[].conditions.temperature',
  ]);
  for (const path of fields) expect(asked).toContain(path);
});

test('every field of a catalogue and a price book is asked', () => {
  const gap = (schema: z.ZodType, sections: readonly Section[], own: readonly RegExp[]) => {
    const held = [...new Set(leavesOf(z.toJSONSchema(schema, { io: 'input' })))];
    const asked = sections.flatMap(({ parts }) => fieldsOf(parts));
    return {
      missing: held.filter((path) => !asked.includes(path) && !own.some((rule) => rule.test(path))),
      unknown: asked.filter((path) => !held.includes(path)),
    };
  };
  // Cracks bridged are claims of the sheet; their old place is read and asked for no more.
  const own = [/(^|\.)id$/, /^schema$/, /\.crackBridging\./];
  expect(gap(catalogueSchema(), CATALOGUE_SECTIONS, own)).toEqual({ missing: [], unknown: [] });
  expect(gap(priceBookSchema(), PRICE_SECTIONS, own)).toEqual({ missing: [], unknown: [] });
});
