import * as z from 'zod';
import type { SpreadCase, SpreadIssue, SpreadSolution } from './types.ts';

const number = z.number();
const point = z.tuple([number, number]);
const ring = z.array(point).min(3);
const table = z.array(z.tuple([number, number])).min(1);

/** `spread-instance-1`, with the product's own optional fields. */
const instanceSchema = z.object({
  format: z.literal('spread-instance-1'),
  name: z.string(),
  outline: ring,
  holes: z.array(ring),
  walls: z.array(z.tuple([point, point])),
  exits: z.array(z.object({ a: point, b: point, outside: z.boolean() })),
  stopLines: z.array(z.object({ a: point, b: point, kind: z.enum(['joint', 'threshold', 'tape']) })),
  mixAt: z.union([z.object({ exit: z.int().min(0) }), z.object({ point })]),
  crew: z.object({
    people: z.int(),
    dedicatedMixer: z.boolean(),
    rateM2PerMinPerPerson: number,
    laneM: number,
    walkMPerMin: number,
    cutters: z.int().optional(),
    cutMPerMinPerPerson: number.optional(),
    broadcasters: z.int().optional(),
    broadcastM2PerMinPerPerson: number.optional(),
    spikedShoes: z.boolean().optional(),
  }),
  batch: z.object({
    litres: number,
    litresPerM2: number,
    mixMin: number,
    handoverMin: number,
    zones: z.array(z.object({ poly: ring, factor: number })).optional(),
  }),
  clock: z.object({ startMin: number, workingMin: table, openMin: table }),
  cellM: number,
  passageM: number.optional(),
  done: z.array(z.object({ ring, walkable: z.boolean() })).optional(),
  openTimeAssumed: z.boolean().optional(),
});

const solutionSchema = z.object({
  format: z.literal('spread-solution-1'),
  instance: z.string(),
  pours: z.array(z.object({ pour: z.int().min(1), cells: z.array(z.int().min(0)) })),
});

export type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly issues: SpreadIssue[] };

/** Reads a case from parsed JSON: the instance itself, or a file `{instance, …}`; what it means is judged by `checkCase`. */
export function readInstance(json: unknown): Read<SpreadCase> {
  const inner = isRecord(json) && 'instance' in json ? json.instance : json;
  const parsed = instanceSchema.safeParse(inner);
  return parsed.success ? { ok: true, value: parsed.data } : { ok: false, issues: issuesOf(parsed.error, inner) };
}

/** Reads a sequence from parsed JSON: the solution itself, or a file `{solution, …}`. */
export function readSolution(json: unknown): Read<SpreadSolution> {
  const inner = isRecord(json) && 'solution' in json ? json.solution : json;
  const parsed = solutionSchema.safeParse(inner);
  if (!parsed.success) return { ok: false, issues: issuesOf(parsed.error, inner) };
  const odd = parsed.data.pours.findIndex(({ cells }) => cells.length % 2 !== 0);
  if (odd >= 0) {
    const value = parsed.data.pours[odd]?.cells.length ?? 0;
    return { ok: false, issues: [{ code: 'spread/cells-not-pairs', path: `pours.${odd}.cells`, value, limits: {} }] };
  }
  return { ok: true, value: parsed.data };
}

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

function issuesOf(error: z.ZodError, root: unknown): SpreadIssue[] {
  return error.issues.map((issue) => {
    let found: unknown = root;
    for (const key of issue.path) found = isRecord(found) ? found[String(key)] : undefined;
    const value = typeof found === 'number' || typeof found === 'string' ? found : typeof found;
    const wanted = 'expected' in issue ? { expected: String(issue.expected) } : { rule: issue.code };
    return { code: 'spread/not-an-instance', path: issue.path.map(String).join('.'), value, limits: wanted };
  });
}
