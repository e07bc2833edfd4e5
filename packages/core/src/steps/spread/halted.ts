import { instantIn } from '../../kernel/instant.ts';
import type { Said } from '../../kernel/said.ts';
import type { Shows } from '../../kernel/shows.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Unit } from '../../kernel/unit.ts';
import {
  arithmeticReasons,
  repairsFor,
  type SpreadReason,
  type SpreadResult,
  searchedReason,
} from '../../spread/index.ts';
import { mostInSequence } from '../formulas/spread.ts';
import type { FloorPart } from './floor.ts';

export interface Halted {
  readonly certain: boolean;
  readonly why: Said;
  readonly repairs: readonly Said[];
  readonly tried: readonly Said[];
}

const KINDS: readonly (readonly [RegExp, number, Unit, Shows])[] = [
  [/M2PerMin$/, 1 / 60, 'm²/s', 'area-rate'],
  [/M2$/, 1, 'm²', 'area'],
  [/L$/, 1e-3, 'm³', 'volume'],
  [/Min$/, 60, 's', 'duration'],
  [/M$|^metres$|^[xy]$/, 1, 'm', 'length'],
];

/** Changes tried in all; what is not found by then is not offered. */
const MOST = 80;
const MOST_ON_LARGE = 24;

/** Figures of the planner, named by their unit, as entries. */
export function told(
  code: string,
  figures: Readonly<Record<string, number>>,
  names: Readonly<Record<string, string>>,
  decides: readonly string[],
  trace: Trace,
): Said {
  const ids: Record<string, string> = {};
  for (const [name, value] of Object.entries(figures)) {
    const [, factor, unit, shows] = KINDS.find(([ends]) => ends.test(name)) ?? [/$/, 1, '1' as const, 'count' as const];
    ids[name] = trace.taken(name, mostInSequence, {
      value: value * factor,
      unit,
      shows,
      inputs: { along: decides },
    }).id;
  }
  const key = code.replaceAll('/', '-');
  return { code: key.startsWith('spread-') ? key : `spread-${key}`, figures: ids, names };
}

/** What holds on the mean is not said of every order. */
export const reasonCode = ({ code, certain }: SpreadReason): string =>
  code === 'spread/batch-outlasts-working-time' && !certain ? `${code}-on-the-mean` : code;

/** Why no order was found, with the arithmetic, and the smallest change of each kind that was planned and works. */
export function haltedBy(
  result: Extract<SpreadResult, { kind: 'none' }>,
  part: FloorPart,
  parts: {
    readonly begun: number;
    readonly zone: string;
    readonly seed: number;
    readonly decides: readonly string[];
    readonly names: Readonly<Record<string, string>>;
  },
  trace: Trace,
): Halted {
  const { problem, leastBad } = result;
  const { score } = leastBad;
  const { names, decides, begun, zone } = parts;
  const found = arithmeticReasons(problem);
  const reason = found[0] ?? searchedReason(problem, score.coldM, score.lateMin, score.maxAgeMin);
  const started = problem.question.clock.startMin;
  const many = problem.squares.count > 600;
  let trial = 0;
  const trials = repairsFor(problem, {
    areas: 'clipped',
    effort: { candidates: many ? 24 : 60, nodes: 0 },
    seed: parts.seed,
    onTrial: () => {
      trial += 1;
      return trial <= (many ? MOST_ON_LARGE : MOST);
    },
  });
  const repairs = trials.flatMap(({ kind, repair }) => {
    if (!repair) return [];
    const { startMin, insteadMin, line, ...figures } = repair.figures;
    const moved =
      startMin === undefined
        ? {}
        : {
            at: instantIn(begun + (startMin - started) * 60_000, zone)
              .slice(0, 16)
              .replace('T', ' '),
          };
    const joint = line === undefined ? {} : { joint: part.stopLines[line]?.name ?? `${line + 1}` };
    return [
      told(repair.code, figures, { ...names, ...moved, ...joint }, decides, trace.within(kind.replaceAll(' ', '-'))),
    ];
  });
  return {
    certain: reason.certain,
    why: told(reasonCode(reason), reason.figures, names, decides, trace.within('why')),
    repairs,
    tried: trials.flatMap(({ kind, repair }) =>
      repair
        ? []
        : [{ code: 'spread-repair-none', names: { ...names, kind: `@spread-kind-${kind.replaceAll(' ', '-')}` } }],
    ),
  };
}
