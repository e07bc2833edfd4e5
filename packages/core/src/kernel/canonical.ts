import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/**
 * Rounds to 9 significant digits. Engines differ in the last bits of exp, log and pow; decisions and texts must not.
 */
export function round9(value: number): number {
  if (!Number.isFinite(value)) throw new Error('a number in canonical text is not finite');
  const rounded = Number(value.toPrecision(9));
  return Object.is(rounded, -0) ? 0 : rounded;
}

function ordered(value: unknown): unknown {
  if (typeof value === 'number') return round9(value);
  if (Array.isArray(value)) return value.map(ordered);
  if (value !== null && typeof value === 'object') {
    const keys = Object.keys(value).sort();
    return Object.fromEntries(
      keys
        .filter((k) => (value as Record<string, unknown>)[k] !== undefined)
        .map((k) => [k, ordered((value as Record<string, unknown>)[k])]),
    );
  }
  return value;
}

/** JSON with sorted keys and numbers at 9 significant digits: the same text in every engine. */
export const canonicalText = (value: unknown, indent = 0): string => JSON.stringify(ordered(value), null, indent);

/** SHA-256 of the canonical text, in hexadecimal. */
export const hashOf = (value: unknown): string => bytesToHex(sha256(utf8ToBytes(canonicalText(value))));

/** Short mark printed on papers so that an old sheet is noticed: `7F2C 91`. */
export function checkMark(value: unknown): string {
  const hex = hashOf(value).slice(0, 6).toUpperCase();
  return `${hex.slice(0, 4)} ${hex.slice(4)}`;
}
