import type { Unit } from '../../kernel/unit.ts';
import { parseQuantity, type TextTrouble } from '../../units/index.ts';
import type { Method } from './methods.ts';

/** What a sheet claims: a number or range in SI, a rank on a scale, or words. */
export type ClaimValue =
  | {
      readonly kind: 'number';
      readonly unit: Unit;
      /** Missing where the claim is a bound: `at most 50 g/L` has no low end. */
      readonly low?: number;
      readonly high?: number;
      /** One step of the last place written, in SI. */
      readonly step: number;
    }
  | { readonly kind: 'rank'; readonly rank: number; readonly of: readonly string[] }
  | { readonly kind: 'words' };

export type ReadValue =
  | { readonly ok: true; readonly value: ClaimValue }
  | { readonly ok: false; readonly code: 'evidence-value-unreadable'; readonly trouble: TextTrouble }
  | {
      readonly ok: false;
      readonly code: 'evidence-unit-of-another-property' | 'evidence-range-upside-down' | 'evidence-outside-scale';
    };

const RANGE = /^(.*?[\d.]\D*?)\s*(?:\bto\b|–|—|…)\s*(\S.*)$/i;
const LEAST = /^(?:≥|>=|>|at least|more than|over|min(?:imum)?\.?)\s*/i;
const MOST = /^(?:≤|<=|<|at most|less than|below|up to|max(?:imum)?\.?)\s*/i;
const NUMBER = /[-+]?\d[\d,]*(?:\.(\d+))?/;
const HAS_FIGURE = /\d/;

interface One {
  readonly value: number;
  readonly unit: Unit;
  readonly step: number;
}

type ReadOne = { readonly ok: true; readonly one: One } | { readonly ok: false; readonly trouble: TextTrouble };

/** Reads one number in the first of the units that it fits. */
function readOne(text: string, units: readonly Unit[]): ReadOne {
  let trouble: TextTrouble | undefined;
  for (const unit of units) {
    const parsed = parseQuantity(text, unit);
    if (parsed.ok)
      return { ok: true, one: { value: parsed.quantity.value, unit, step: stepOf(text, unit, parsed.quantity.value) } };
    trouble ??= parsed.trouble;
  }
  if (!trouble) throw new Error('a number was read for a property without units');
  return { ok: false, trouble };
}

/** How much the value moves when its last written place moves by one. Whole numbers count to the one. */
function stepOf(text: string, unit: Unit, value: number): number {
  const found = NUMBER.exec(text);
  if (!found) return 0;
  const places = found[1]?.length ?? 0;
  const next = (Number(found[0].replaceAll(',', '')) + 10 ** -places).toFixed(places);
  const moved = parseQuantity(text.replace(found[0], next), unit);
  return moved.ok ? Math.abs(moved.quantity.value - value) : 0;
}

/** `2400 to 2800 psi`: the first end takes the unit of the second where it has none. */
function readRange(first: string, second: string, units: readonly Unit[]): ReadValue {
  const high = readOne(second, units);
  if (!high.ok) return refused(high.trouble);
  const unitText = second.replace(NUMBER, '').trim();
  const bare = NUMBER.exec(first)?.[0] === first.trim();
  const low = readOne(bare && unitText !== '' ? `${first.trim()} ${unitText}` : first, units);
  if (!low.ok) return refused(low.trouble);
  if (low.one.unit !== high.one.unit) return { ok: false, code: 'evidence-unit-of-another-property' };
  if (low.one.value > high.one.value) return { ok: false, code: 'evidence-range-upside-down' };
  const step = Math.max(low.one.step, high.one.step);
  return { ok: true, value: { kind: 'number', unit: low.one.unit, low: low.one.value, high: high.one.value, step } };
}

const refused = (trouble: TextTrouble): ReadValue =>
  trouble.code === 'unit-wrong-dimension'
    ? { ok: false, code: 'evidence-unit-of-another-property' }
    : { ok: false, code: 'evidence-value-unreadable', trouble };

function readNumber(text: string, units: readonly Unit[]): ReadValue {
  const range = RANGE.exec(text);
  if (range?.[1] && range[2]) return readRange(range[1], range[2], units);
  const bound = LEAST.test(text) ? 'low' : MOST.test(text) ? 'high' : undefined;
  const read = readOne(text.replace(LEAST, '').replace(MOST, ''), units);
  if (!read.ok) return refused(read.trouble);
  const { value, unit, step } = read.one;
  if (bound === 'low') return { ok: true, value: { kind: 'number', unit, low: value, step } };
  if (bound === 'high') return { ok: true, value: { kind: 'number', unit, high: value, step } };
  return { ok: true, value: { kind: 'number', unit, low: value, high: value, step } };
}

/** Readings kept at most: a catalogue of thousands of claims is read again with every plan of its jobs. */
const MOST_KEPT = 5000;
const kept = new Map<string, ReadValue>();

/**
 * Reads a claimed value by its method, or by every method of its property while none is named. Words without a figure
 * stay words.
 */
export function readValue(typed: string, methods: readonly Method[]): ReadValue {
  const key = `${typed}\n${methods.map(({ id }) => id).join('\n')}`;
  const known = kept.get(key);
  if (known) return known;
  const read = readAnew(typed, methods);
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(key, read);
  return read;
}

function readAnew(typed: string, methods: readonly Method[]): ReadValue {
  const text = typed.trim();
  for (const { order } of methods) {
    // A tape rating carries its method as a letter, 4B; a pencil of that name is another rank.
    const rank = order?.indexOf(text) ?? -1;
    const lettered = rank >= 0 ? rank : (order?.indexOf(text.replace(/(?<=^\d)[AB]$/, '')) ?? -1);
    if (order && lettered >= 0) return { ok: true, value: { kind: 'rank', rank: lettered, of: order } };
  }
  const units = [...new Set(methods.flatMap((one) => one.units ?? []))];
  if (units.length === 0 || !HAS_FIGURE.test(text)) return { ok: true, value: { kind: 'words' } };
  const read = readNumber(text, units);
  const scale = methods.length === 1 ? methods[0]?.scale : undefined;
  if (!read.ok || read.value.kind !== 'number' || !scale) return read;
  const [least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY] = scale;
  const { low = least, high = most } = read.value;
  return low < least || high > most ? { ok: false, code: 'evidence-outside-scale' } : read;
}
