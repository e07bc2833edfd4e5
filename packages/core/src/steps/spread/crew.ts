import type { Layer } from '../../catalogue.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Batch, Crew } from '../../spread/index.ts';
import { givenCount, givenFact, type OptionContext } from '../context.ts';
import { onePersonRate, sumInSequence, volumePerFloor } from '../formulas/spread.ts';
import type { HoursPlan, LayerQuantity } from '../results.ts';
import { type FloorPart, narrowestDoorway } from './floor.ts';

/** Assumed where nobody measures them: width of a lane, walking over a floor, handing a pail over. */
const LANE_M = 0.5;
const WALK_M_S = 40 / 60;
const HANDOVER_S = 30;
/** Above this floor squares are as wide as two lanes: the search would take too long. */
const COARSE_FROM_M2 = 4000;
/** From three people on one does nothing but mix. */
const MIXER_FROM = 3;

export interface CrewPlanned {
  readonly crew: Crew;
  readonly batch: Batch;
  readonly cellM: number;
  readonly rate: Known<'m²/s'>;
  readonly largest: Known<'m³'>;
  /** Mixed volume for each area of floor, by area. */
  readonly perArea: ReadonlyMap<string, Known<'m'>>;
  /** Everything that decides how fast and how much. */
  readonly decides: readonly string[];
}

/** Up to here squares of half a lane are few enough to find the way through a very narrow doorway. */
const FINE_UP_TO_M2 = 500;

/** Width of the squares, m: no wider than the narrowest doorway, or the rooms behind it would seem cut off. */
function cellFor(areaM2: number, doorwayM: number, laneM: number): number {
  const usual = areaM2 > COARSE_FROM_M2 ? 2 * laneM : laneM;
  const fits = [2 * laneM, laneM, laneM / 2].filter((cell) => cell <= usual && cell <= doorwayM + 1e-9);
  const [widest = laneM] = fits;
  return widest < laneM && areaM2 > FINE_UP_TO_M2 ? laneM : widest;
}

const SPREADING = ['squeegee', 'back-roll', 'roll-thin'];

/** Who spreads, how fast, and out of which batches; undefined where the coat has no rate or no quantity. */
export function crewOf(
  ctx: OptionContext,
  layer: Layer,
  part: FloorPart,
  timed: HoursPlan,
  quantity: LayerQuantity,
  trace: Trace,
): CrewPlanned | undefined {
  const own = timed.tasks.filter((task) => task.layer === layer.id);
  const rateOf = (work: string): Known | undefined => own.find((task) => task.work === work)?.rate;
  const rates = SPREADING.flatMap((work) => rateOf(work) ?? []) as Known<'m²/s'>[];
  const mix = rateOf('mix') as Known<'s'> | undefined;
  const batches = quantity.batches;
  const { people } = ctx.option;
  if (rates.length === 0 || !mix || !batches || batches.values.length === 0) return undefined;
  const rate = trace.figure('rate', onePersonRate, { rates });
  const cut = rateOf('cut-in') as Known<'m/s'> | undefined;
  const broadcast = (rateOf('broadcast-flake') ?? rateOf('broadcast-quartz')) as Known<'m²/s'> | undefined;
  const largest = trace.given('largest-batch', {
    value: Math.max(...batches.values),
    unit: 'm³',
    origin: 'chosen',
    where: batches.id,
    shows: 'volume',
  });
  const assumed = <U extends 'm' | 'm/s' | 's'>(name: string, value: number, unit: U) =>
    trace.given(name, { value, unit, origin: 'assumed', says: `spread-${name}-assumed` });
  const chosen = ctx.option.spread ?? {};
  const lane = chosen.lane ? givenFact(trace, 'lane', chosen.lane) : assumed('lane', LANE_M, 'm');
  const walk = assumed('walk', WALK_M_S, 'm/s');
  const handover = assumed('handover', HANDOVER_S, 's');
  const perArea = new Map(
    part.areas.flatMap(({ id, net }) => {
      const here = quantity.areas.find(({ area }) => area === id);
      if (!here) return [];
      const shares = [here.film, here.verticals, here.profile, here.texture, here.porosity];
      const whole = shares.flatMap((share) => (share ? [share] : []));
      const volume = trace.figure(`floor.${id}.net`, sumInSequence, { along: whole }) as Known<'m³'>;
      const per = trace.figure(`floor.${id}.per-area`, volumePerFloor, {
        part: volume,
        whole: quantity.net,
        mixed: quantity.needed,
        floor: net,
      });
      return [[id, per] as const];
    }),
  );
  const first = part.areas[0] && perArea.get(part.areas[0].id);
  if (!first) return undefined;
  const dedicatedMixer = ctx.option.dedicatedMixer ?? people >= MIXER_FROM;
  const hands = givenCount(trace, 'hands', people, 'chosen');
  const area = part.areas.reduce((sum, { net }) => sum + net.value, 0);
  return {
    rate,
    largest,
    perArea,
    decides: [
      rate.id,
      hands.id,
      mix.id,
      handover.id,
      walk.id,
      lane.id,
      largest.id,
      ...[...perArea.values()].map(({ id }) => id),
      ...(cut ? [cut.id] : []),
      ...(broadcast ? [broadcast.id] : []),
    ],
    cellM: cellFor(area, narrowestDoorway(part), lane.value),
    crew: {
      people,
      dedicatedMixer,
      rateM2PerMinPerPerson: rate.value * 60,
      laneM: lane.value,
      walkMPerMin: WALK_M_S * 60,
      ...(chosen.cutters ? { cutters: chosen.cutters } : {}),
      ...(chosen.broadcasters && broadcast ? { broadcasters: chosen.broadcasters } : {}),
      ...(chosen.spikedShoes ? { spikedShoes: true } : {}),
      ...(cut ? { cutMPerMinPerPerson: cut.value * 60 } : {}),
      ...(broadcast ? { broadcastM2PerMinPerPerson: broadcast.value * 60 } : {}),
    },
    batch: {
      litres: largest.value * 1000,
      litresPerM2: first.value * 1000,
      mixMin: mix.value / 60,
      handoverMin: HANDOVER_S / 60,
      zones: part.rooms.slice(1).flatMap(({ area: { id }, placed }) => {
        const per = perArea.get(id);
        return per ? [{ poly: placed.outline, factor: per.value / first.value }] : [];
      }),
    },
  };
}
