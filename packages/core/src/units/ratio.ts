/**
 * An exact factor as a fraction of whole numbers in lowest terms.
 *
 * Factors are multiplied, divided and raised as fractions, so a compound unit carries no rounding of its own:
 * only the last step to a floating number rounds, once.
 */
export type Ratio = { readonly over: bigint; readonly under: bigint };

const greatestCommonDivisor = (a: bigint, b: bigint): bigint => {
  let [x, y] = [a < 0n ? -a : a, b];
  while (y !== 0n) [x, y] = [y, x % y];
  return x;
};

/** A fraction in lowest terms. Throws RangeError unless the denominator is positive. */
export const ratio = (over: bigint, under: bigint = 1n): Ratio => {
  if (under <= 0n) throw new RangeError('a factor needs a positive denominator');
  const shared = greatestCommonDivisor(over, under);
  return { over: over / shared, under: under / shared };
};

/** The product of exact factors. */
export const product = (...factors: readonly Ratio[]): Ratio =>
  factors.reduce((sum, factor) => ratio(sum.over * factor.over, sum.under * factor.under), ratio(1n));

/** One positive factor divided by another. */
export const quotient = (a: Ratio, b: Ratio): Ratio => ratio(a.over * b.under, a.under * b.over);

/** A positive factor raised to a whole power, which may be negative. */
export const power = (a: Ratio, exponent: number): Ratio => {
  const size = BigInt(Math.abs(exponent));
  const raised = ratio(a.over ** size, a.under ** size);
  return exponent < 0 ? quotient(ratio(1n), raised) : raised;
};

/**
 * The value times the factor.
 *
 * A floating number holds whole numbers exactly up to 2^53; while both halves of the fraction fit, multiply and
 * divide by whole numbers, so that 250 µm is 0.00025 m and not 0.00024999999999999995 m.
 */
export const scale = (value: number, factor: Ratio): number => {
  const [over, under] = [Number(factor.over), Number(factor.under)];
  if (over <= Number.MAX_SAFE_INTEGER && under <= Number.MAX_SAFE_INTEGER) {
    const raised = value * over;
    if (Number.isFinite(raised)) return raised / under;
  }
  return value * asNumber(factor);
};

/** The factor as the floating number nearest to it, to within one unit in the last place. */
export const asNumber = ({ over, under }: Ratio): number => {
  // 80 extra binary places keep the division exact far below the last place of a 53-bit number.
  const bits = 80 + Math.max(0, under.toString(2).length - over.toString(2).length);
  return Number((over << BigInt(bits)) / under) / 2 ** bits;
};
