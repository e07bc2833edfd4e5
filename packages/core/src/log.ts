import { z } from 'zod';
import { idText, instant, quantity, text } from './fields.ts';
import type { Result } from './kernel/issue.ts';
import { checkSchema, readJson, validate } from './read.ts';

/** What happened on the day: readings and acts, appended and never changed. */

export const LOG_SCHEMA = 'slabwright.log';
export const LOG_VERSION = 1;

const temperature = () => quantity('°C', { least: '-40 °C', most: '80 °C', shows: 'temperature' });

const common = {
  id: idText(),
  at: instant(),
  by: text(80).optional(),
  where: text(80).optional(),
  note: text(600).optional(),
};

const entry = () =>
  z.discriminatedUnion('kind', [
    z.strictObject({
      ...common,
      kind: z.literal('climate'),
      air: temperature(),
      humidity: quantity('1', { least: '0 %', most: '100 %', shows: 'humidity' }),
      slab: temperature().optional(),
    }),
    z.strictObject({
      ...common,
      kind: z.literal('batch'),
      layer: idText(),
      volume: quantity('m³', { least: '0.01 L', most: '200 L', shows: 'volume' }),
      lots: z
        .array(z.strictObject({ component: idText(), lot: text(60) }))
        .max(6)
        .optional(),
      material: temperature().optional(),
    }),
    z.strictObject({ ...common, kind: z.literal('reached'), layer: idText(), line: text(80) }),
    z.strictObject({ ...common, kind: z.literal('started'), task: text(120) }),
    z.strictObject({ ...common, kind: z.literal('stopped'), task: text(120) }),
    z.strictObject({ ...common, kind: z.literal('remark'), text: text(2000) }),
  ]);

export const log = () =>
  z.strictObject({
    schema: z.literal(`${LOG_SCHEMA}/${LOG_VERSION}`),
    job: idText(),
    option: idText(),
    entries: z.array(entry()).max(20_000),
  });

export type Log = z.output<ReturnType<typeof log>>;

const LOG = log();

export function logFrom(value: unknown): Result<Log> {
  const issues = checkSchema(value, LOG_SCHEMA, LOG_VERSION);
  return issues.length > 0 ? { ok: false, issues } : validate(LOG, value);
}

export function logFromText(content: string): Result<Log> {
  const json = readJson(content);
  return json.ok ? logFrom(json.value) : json;
}
