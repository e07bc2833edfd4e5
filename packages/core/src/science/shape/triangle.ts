import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

/** Area of a triangle from its sides, in the order of operations that keeps the digits of thin triangles. */
function fromSides(a: number, b: number, c: number): number | undefined {
  const [long, middle, short] = [a, b, c].sort((p, q) => q - p) as [number, number, number];
  const slack = short - (long - middle);
  if (slack < 0) return undefined;
  return Math.sqrt((long + (middle + short)) * slack * (short + (long - middle)) * (long + (middle - short))) / 4;
}

const side = [0.05, 500] as const;
const sense = [0, 1e6] as const;

/** Area of a triangle from its three sides, m² (Heron). Refused when the sides do not close. */
export const triangleArea = formula({
  id: 'shape/triangle',
  says: 'Area of a triangle from its three sides',
  equation: 'area = sqrt(s (s - sideA) (s - sideB) (s - sideC)), s = half the sum',
  takes: { sideA: 'm', sideB: 'm', sideC: 'm' },
  gives: 'm²',
  holds: { sideA: side, sideB: side, sideC: side },
  refuses: { sideA: sense, sideB: sense, sideC: sense },
  source: 'plane-geometry',
  locator: 'Heron',
  shows: 'area',
  inputShows: { sideA: 'length', sideB: 'length', sideC: 'length' },
  noOutsideRow: 'A theorem; the 13-14-15 triangle is exact (CALC).',
  compute: ({ sideA, sideB, sideC }) => {
    const found = fromSides(sideA, sideB, sideC);
    if (found === undefined) throw new Refuse('sides-do-not-close', 'sideC');
    return found;
  },
});

/**
 * Area of a quadrilateral from four sides and one diagonal, m²: two triangles on the diagonal.
 *
 * One diagonal fixes the room and checks nothing: a slip of the tape stays unseen. The second diagonal is the check.
 */
export const quadrilateralArea = formula({
  id: 'shape/quadrilateral',
  says: 'Area of a quadrilateral from four sides and the diagonal from its first to its third corner',
  equation: 'area = heron(sideAB, sideBC, diagonalAC) + heron(sideCD, sideDA, diagonalAC)',
  takes: { sideAB: 'm', sideBC: 'm', sideCD: 'm', sideDA: 'm', diagonalAC: 'm' },
  gives: 'm²',
  holds: { sideAB: side, sideBC: side, sideCD: side, sideDA: side, diagonalAC: side },
  refuses: { sideAB: sense, sideBC: sense, sideCD: sense, sideDA: sense, diagonalAC: sense },
  source: 'plane-geometry',
  locator: 'Heron',
  shows: 'area',
  inputShows: { sideAB: 'length', sideBC: 'length', sideCD: 'length', sideDA: 'length', diagonalAC: 'length' },
  noOutsideRow: 'Two triangles; worked by hand (CALC).',
  compute: ({ sideAB, sideBC, sideCD, sideDA, diagonalAC }) => {
    const one = fromSides(sideAB, sideBC, diagonalAC);
    if (one === undefined) throw new Refuse('sides-do-not-close', 'sideAB');
    const other = fromSides(sideCD, sideDA, diagonalAC);
    if (other === undefined) throw new Refuse('sides-do-not-close', 'sideCD');
    return one + other;
  },
});
