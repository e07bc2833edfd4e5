import type { Product } from '../../catalogue.ts';
import type { Known } from '../../kernel/entry.ts';
import { instantIn } from '../../kernel/instant.ts';
import type { Trace } from '../../kernel/trace.ts';
import { type Candidate, pourSheets, type SpreadProblem } from '../../spread/index.ts';
import { givenFact, sheetOf } from '../context.ts';
import { componentMass, componentVolume } from '../formulas/quantities-components.ts';
import { thinnerVolume } from '../formulas/quantities-volumes.ts';
import { mostInSequence, pourVolume, sumInSequence } from '../formulas/spread.ts';
import { mixShares } from '../quantities/mix-shares.ts';
import type { SpreadBailOut, SpreadPour } from '../results.ts';
import type { CrewPlanned } from './crew.ts';
import { endInWords, linesOf, mostOf, openSides } from './edges.ts';
import { type Door, type FloorPart, roomAt } from './floor.ts';

export interface PoursFacts {
  readonly part: FloorPart;
  readonly hands: CrewPlanned;
  /** What is mixed at a time. */
  readonly batch: Known<'m³'>;
  readonly product: Product;
  /** Thinner per mixed coating, by volume. */
  readonly thinnerRatio: Known<'1'> | undefined;
  readonly door: Door;
  /** Milliseconds since 1970 of the first mixing. */
  readonly begun: number;
  readonly zone: string;
  /** Finest mark that is worth reading off the tape, m. */
  readonly mark: number;
}

const cm = (value: number): number => Math.round(value * 100) / 100;
const point = ([x, y]: readonly [number, number]): readonly [number, number] => [cm(x), cm(y)];

/** The pours of a sequence with their batches, moments, ends and outlines, and where to stop in each. */
export function poursOf(
  problem: SpreadProblem,
  best: Candidate,
  { part, hands, batch, product, thinnerRatio, door, begun, zone, mark }: PoursFacts,
  trace: Trace,
): { readonly pours: readonly SpreadPour[]; readonly bailOuts: readonly SpreadBailOut[] } {
  const { squares } = problem;
  const { pourOf, time } = best.clock;
  const at = (minute: number): string => instantIn(begun + Math.round(minute) * 60_000, zone);
  const shares = mixShares(trace, product);
  const where = sheetOf(product);
  const densities = new Map(
    product.components.flatMap(({ id, density }) =>
      density ? [[id, givenFact(trace, `${id}.density`, density, { where })] as const] : [],
    ),
  );
  const [per] = hands.perArea.values();
  if (!per) throw new Error('a pour without a volume for its floor');
  const along = hands.decides;
  const bailOuts: SpreadBailOut[] = [];
  const arrowIn = (inside: (square: number) => boolean): readonly (readonly [number, number])[] => {
    const squaresInside = [...best.order].filter(inside);
    const ends = [squaresInside[0], squaresInside.at(-1)];
    return ends.flatMap((s) => (s === undefined ? [] : [point([squares.x[s] as number, squares.y[s] as number])]));
  };
  const roomOf = Array.from({ length: squares.count }, (_, s) =>
    part.rooms.length === 1 ? 0 : roomAt(part, [squares.x[s] as number, squares.y[s] as number]),
  );
  const pours = pourSheets(problem, best).map((sheet, k): SpreadPour => {
    const t = trace.within('pour').within(`${sheet.pour}`);
    const rooms = new Set(roomOf.filter((_, s) => pourOf[s] === k));
    const here = part.areas.filter((_, i) => rooms.has(i));
    // an arrow and a number of a pour through several rooms stand in the one that has most of it
    const own = mostOf(roomOf.filter((_, s) => pourOf[s] === k));
    const inside = (s: number): boolean => pourOf[s] === k && roomOf[s] === own;
    const area = t.taken('area', sumInSequence, {
      value: sheet.areaM2,
      unit: 'm²',
      shows: 'area',
      inputs: { along: here.map(({ net }) => net.id) },
    });
    const volume =
      hands.perArea.size === 1 && sheet.part
        ? t.figure('volume', pourVolume, { area, perArea: per })
        : t.taken('volume', sumInSequence, {
            value: sheet.mixLitres / 1000,
            unit: 'm³',
            shows: 'volume',
            inputs: { along: [batch.id] },
          });
    const wet = (s: number): boolean => (pourOf[s] as number) <= k;
    const sides = openSides(squares, wet, (s) => pourOf[s] === k);
    const stop = sheet.bailOut;
    if (stop) {
      const latest = best.order[stop.squares - 1] as number;
      const until = time[latest] as number;
      const open = openSides(
        squares,
        (s) => (time[s] as number) <= until,
        () => true,
      );
      bailOuts.push({
        pour: `${sheet.pour}`,
        at: at(stop.minute),
        tape: t.taken('tape', sumInSequence, { value: stop.tapeM, unit: 'm', shows: 'length', inputs: { along } }),
        joints: stop.lines.flatMap((line) => part.stopLines[line]?.name ?? []),
        edge: linesOf(open, squares.cellM),
      });
    }
    // Down to the minute before: a time to be kept is never rounded up.
    const placeBy = Math.floor(sheet.mixedMin + sheet.workingMin);
    return {
      pour: `${sheet.pour}`,
      areas: here.map(({ id }) => id),
      volume,
      area,
      parts: shares.map(({ component, share }) => {
        const amount = t.figure(`${component}.volume`, componentVolume, { mixed: volume, share });
        const density = densities.get(component);
        return {
          component,
          name: product.components.find(({ id }) => id === component)?.name ?? component,
          volume: amount,
          ...(density ? { mass: t.figure(`${component}.mass`, componentMass, { volume: amount, density }) } : {}),
        };
      }),
      ...(thinnerRatio ? { thinner: t.figure('thinner', thinnerVolume, { coating: volume, thinnerRatio }) } : {}),
      mixFrom: at(sheet.mixFromMin),
      start: at(sheet.startMin),
      // An end kept in seconds is not rounded past the minute it must be kept by.
      end: at(Math.min(sheet.endMin, placeBy)),
      placeBy: at(placeBy),
      ends: endInWords(sides, squares, part, door, along, mark, t),
      ...(Number.isFinite(sheet.spareMin) && k > 0
        ? {
            spare: t.taken('spare', mostInSequence, {
              value: Math.max(0, sheet.spareMin) * 60,
              unit: 's',
              shows: 'duration',
              inputs: { along },
            }),
          }
        : {}),
      outline: sheet.outline.map((ring) => ring.map(point)),
      arrow: here.length > 1 ? arrowIn(inside) : [point(sheet.from), point(sheet.to)],
      mark: point(middleSquare(squares, inside)),
      edge: linesOf(sides, squares.cellM),
    };
  });
  return { pours, bailOuts };
}

/** The square nearest to the middle of those asked for: a number there stands on the pour, whatever its shape. */
function middleSquare(
  { count, x, y }: SpreadProblem['squares'],
  asked: (square: number) => boolean,
): readonly [number, number] {
  const own = Array.from({ length: count }, (_, s) => s).filter(asked);
  const mean = (axis: Float64Array): number => own.reduce((sum, s) => sum + (axis[s] as number), 0) / own.length;
  const [mx, my] = [mean(x), mean(y)];
  const away = (s: number): number => ((x[s] as number) - mx) ** 2 + ((y[s] as number) - my) ** 2;
  const nearest = own.reduce((best, s) => (away(s) < away(best) - 1e-9 ? s : best), own[0] as number);
  return [x[nearest] as number, y[nearest] as number];
}
