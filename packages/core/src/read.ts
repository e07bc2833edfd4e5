import type { z } from 'zod';
import type { Issue, Result } from './kernel/issue.ts';

/** A job with its drawing is far smaller; anything larger is not one of our files and is refused before parsing. */
export const MOST_BYTES = 10 * 1024 * 1024;

/** Lists and objects inside each other in a file of ours are far fewer; what reads deeper text may call itself once a level. */
export const MOST_DEPTH = 200;

type RawIssue = z.core.$ZodIssue;

/** Parses text as JSON, refusing what is too large, cut off or not JSON, each with a way out. */
export function readJson(text: string): Result<unknown> {
  if (text.length > MOST_BYTES) {
    return fail({ code: 'file-too-large', path: [], value: `${text.length}`, limits: ['0', `${MOST_BYTES}`] });
  }
  if (text.trim() === '') return fail({ code: 'file-empty', path: [] });
  if (depthOf(text) > MOST_DEPTH) {
    return fail({ code: 'file-too-deep', path: [], limits: ['0', `${MOST_DEPTH}`] });
  }
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch (trouble) {
    const position = positionIn(trouble);
    // Engines word it differently; what they have in common is that the trouble sits where the text stops.
    const atTheEnd = position !== '' && Number(position) >= text.trimEnd().length;
    const cut = atTheEnd || /end of JSON|Unexpected end|Unterminated/i.test(String(trouble));
    return fail({ code: cut ? 'file-cut-off' : 'file-not-json', path: [], names: { position } });
  }
}

/** How deep JSON text nests, found by counting brackets outside of texts: parsing it would be too late. */
export function depthOf(text: string): number {
  let depth = 0;
  let deepest = 0;
  let quoted = false;
  for (let index = 0; index < text.length; index++) {
    const sign = text[index];
    if (quoted) {
      if (sign === '\\') index++;
      else if (sign === '"') quoted = false;
    } else if (sign === '"') quoted = true;
    else if (sign === '[' || sign === '{') deepest = Math.max(deepest, ++depth);
    else if (sign === ']' || sign === '}') depth--;
  }
  return deepest;
}

const positionIn = (trouble: unknown): string => /position (\d+)/.exec(String(trouble))?.[1] ?? '';

const fail = (issue: Issue): { ok: false; issues: readonly Issue[] } => ({ ok: false, issues: [issue] });

/** Checks the `schema` line first, so that a file of the future is named as such and not as a heap of wrong fields. */
export function checkSchema(value: unknown, name: string, version: number): readonly Issue[] {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) {
    return [{ code: 'file-not-an-object', path: [], names: { expected: `${name}/${version}` } }];
  }
  const schema = (value as Record<string, unknown>).schema;
  const expected = `${name}/${version}`;
  if (schema === expected) return [];
  if (typeof schema !== 'string') return [{ code: 'schema-missing', path: ['schema'], names: { expected } }];
  const [gotName, gotVersion] = schema.split('/');
  if (gotName !== name) return [{ code: 'schema-other-kind', path: ['schema'], value: schema, names: { expected } }];
  const code = Number(gotVersion) > version ? 'schema-from-the-future' : 'schema-unknown-version';
  return [{ code, path: ['schema'], value: schema, names: { expected } }];
}

/** Validates a value, turning every zod issue into one of ours. */
export function validate<S extends z.ZodType>(schema: S, value: unknown): Result<z.output<S>> {
  const parsed = schema.safeParse(value);
  if (parsed.success) return { ok: true, value: parsed.data };
  return { ok: false, issues: issuesOf(parsed.error, value) };
}

/** What a schema found wrong with a value, as issues of ours. */
export function issuesOf(error: { readonly issues: readonly RawIssue[] }, value: unknown): readonly Issue[] {
  return error.issues.flatMap((issue) => fromZod(issue, value, []));
}

function at(value: unknown, path: readonly PropertyKey[]): unknown {
  let here = value;
  for (const key of path) {
    if (here === null || typeof here !== 'object') return undefined;
    here = (here as Record<PropertyKey, unknown>)[key];
  }
  return here;
}

const shown = (value: unknown): string => {
  const text = typeof value === 'string' ? value : (JSON.stringify(value) ?? 'nothing');
  return text.length > 80 ? `${text.slice(0, 77)}…` : text;
};

const kindOf = (value: unknown): string =>
  value === undefined ? 'nothing' : value === null ? 'null' : Array.isArray(value) ? 'list' : typeof value;

function fromZod(issue: RawIssue, root: unknown, before: readonly PropertyKey[]): readonly Issue[] {
  const full = [...before, ...issue.path];
  const path = full.map((key) => (typeof key === 'symbol' ? String(key) : key));
  const value = at(root, full);
  switch (issue.code) {
    case 'custom': {
      const params = (issue.params ?? {}) as Partial<Issue>;
      return [{ ...params, code: params.code ?? 'field-invalid', path }];
    }
    case 'invalid_type':
      if (value === undefined) return [{ code: 'field-missing', path, names: { expected: issue.expected } }];
      if (issue.expected === 'string' && typeof value === 'number') {
        return [{ code: 'quantity-needs-a-unit', path, value: shown(value) }];
      }
      return [
        {
          code: 'field-wrong-type',
          path,
          value: shown(value),
          names: { expected: issue.expected, got: kindOf(value) },
        },
      ];
    case 'invalid_value':
      if (value === undefined) return [{ code: 'field-missing', path, limits: issue.values.map(String) }];
      return [{ code: 'field-not-a-choice', path, value: shown(value), limits: issue.values.map(String) }];
    case 'unrecognized_keys':
      return issue.keys.map((key) => ({ code: 'field-unknown', path: [...path, key], value: key }));
    case 'too_small':
    case 'too_big': {
      if (typeof value === 'number') return [outsideOf(issue, value, path)];
      const bound = issue.code === 'too_small' ? issue.minimum : issue.maximum;
      return [
        {
          code: issue.code === 'too_small' ? 'too-few' : 'too-many',
          path,
          value: Array.isArray(value) ? `${value.length}` : shown(value),
          limits: [`${bound}`],
        },
      ];
    }
    case 'invalid_union':
      return fromUnion(issue, root, full, value);
    default:
      return [{ code: 'field-invalid', path, value: shown(value) }];
  }
}

/** A plain number below or above what is read. */
function outsideOf(
  issue: Extract<RawIssue, { code: 'too_small' | 'too_big' }>,
  value: number,
  path: Issue['path'],
): Issue {
  const side = issue.code === 'too_small' ? 'small' : 'big';
  const bound = `${issue.code === 'too_small' ? issue.minimum : issue.maximum}`;
  const code = issue.inclusive === false ? `number-too-${side}-or-at-bound` : `number-too-${side}`;
  return { code, path, value: shown(value), limits: [bound] };
}

/** Of the branches of a union, speaks only of the one that has the form of what was typed. */
function fromUnion(
  issue: Extract<RawIssue, { code: 'invalid_union' }>,
  root: unknown,
  full: readonly PropertyKey[],
  value: unknown,
): readonly Issue[] {
  const branches = issue.errors.map((errors) => errors.flatMap((error) => fromZod(error, root, full)));
  const fits = (errors: readonly RawIssue[]): boolean =>
    !errors.some((e) => e.path.length === 0 && e.code === 'invalid_type');
  const index = issue.errors.findIndex(fits);
  const branch = branches[Math.max(index, 0)];
  return branch && branch.length > 0 ? branch : [{ code: 'field-invalid', path: full.map(keyOf), value: shown(value) }];
}

const keyOf = (key: PropertyKey): string | number => (typeof key === 'symbol' ? String(key) : key);
