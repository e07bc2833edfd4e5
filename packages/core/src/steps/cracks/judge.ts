import type { Figure, Known } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { filmStrain, jointOpening } from '../../science/movement/index.ts';
import { givenField, type OptionContext } from '../context.ts';
import { openingToBear, openingToReckonWith, slabAtJoint } from '../formulas/cracks.ts';
import type { AreaMeasure, CrackHandling, CrackPlan, Point, SurveyPlan } from '../results.ts';
import { bridges, type Shown } from './bridging.ts';
import { dynamicClassFor, staticClassFor } from './classes.ts';
import { reachOf } from './reach.ts';
import { type FromReadings, fromReadings } from './readings.ts';
import type { Season } from './season.ts';

/** What the judgement of every line of an option shares. */
export interface Around {
  readonly ctx: OptionContext;
  readonly surveyed: SurveyPlan;
  readonly season: Season;
  readonly shown: readonly Shown[];
}

type DrawnArea = Around['ctx']['job']['areas'][number];
type Line = NonNullable<DrawnArea['joints']>[number] | NonNullable<DrawnArea['cracks']>[number];

const pointsOf = (line: Line): readonly Point[] => line.along.map(([x, y]): Point => [x.value, y.value]);

/** All cracks and joints of one area. */
export function judgeArea(around: Around, measure: AreaMeasure, trace: Trace): readonly CrackPlan[] {
  const drawn = around.ctx.job.areas.find(({ id }) => id === measure.id);
  if (!drawn) throw new Error(`the survey measured an area that is not drawn: ${measure.id}`);
  const t = trace.within(measure.id);
  const cracks = (drawn.cracks ?? []).flatMap((line) => {
    const measured = measure.cracks.find(({ id }) => id === line.id);
    if (!measured) return [];
    const own = t.within(line.id);
    const read = fromReadings(line, around.season, own);
    const said = measured.moves === 'yes' ? 'moving' : measured.moves === 'no' ? 'dormant' : 'not known';
    const from = read ? 'two readings' : said === 'not known' ? 'formula' : 'said';
    return [
      judge(around, measure, drawn, line, 'crack', measured.length, { state: read?.state ?? said, from, read }, own),
    ];
  });
  const joints = (drawn.joints ?? []).flatMap((line) => {
    const measured = measure.joints.find(({ id }) => id === line.id);
    if (!measured) return [];
    const found = { state: 'moving', from: 'formula', read: undefined } as const;
    return [judge(around, measure, drawn, line, line.kind, measured.length, found, t.within(line.id))];
  });
  return [...cracks, ...joints];
}

interface FoundOut {
  readonly state: CrackPlan['state'];
  readonly from: CrackPlan['from'];
  readonly read: FromReadings | undefined;
}

function judge(
  around: Around,
  measure: AreaMeasure,
  drawn: DrawnArea,
  line: Line,
  kind: CrackPlan['kind'],
  length: Known<'m'>,
  { state, from, read }: FoundOut,
  trace: Trace,
): CrackPlan {
  const { season } = around;
  const slabLength = state === 'dormant' ? undefined : slabOf(measure, drawn, line, trace);
  const opens = (name: string, temperatureRange: Known<'K'>, shrinkageStrain: Known<'1'>): Figure<'m'> | undefined =>
    slabLength &&
    trace.figure(name, openingToReckonWith, {
      opening: trace.figure(`${name}-by-formula`, jointOpening, {
        slabLength,
        restraint: season.restraint,
        expansionCoefficient: season.expansion,
        temperatureRange,
        shrinkageStrain,
      }),
    });
  const winter = read?.season ?? opens('season', season.cools, season.shrinkage);
  const nothingMore = season.day && trace.given('no-shrinkage', { value: 0, unit: '1', origin: 'chosen' });
  const day = season.day && nothingMore ? opens('day', season.day, nothingMore) : undefined;
  // The factor of two is the formula's; a line through two readings of this very crack needs none.
  const toBear = read?.season ?? (winter && trace.figure('to-bear', openingToBear, { opening: winter }));
  const bridged = bridges(around.shown, toBear, season);
  const handling = handlingOf(kind, state, bridged.answer);
  const free = line.bondBreaker;
  const freeLength = free && givenField(trace, 'free-length', free, 'chosen');
  const change = changeFor(around.ctx, handling);
  return {
    id: line.id,
    area: measure.id,
    kind,
    length,
    state,
    from,
    ...(slabLength ? { slabLength } : {}),
    ...(winter ? { season: winter } : {}),
    ...(day ? { day } : {}),
    ...(toBear ? { toBear, classNeeded: staticClassFor(toBear.value) } : {}),
    ...(toBear && day ? { classNeededByDay: dynamicClassFor(toBear.value, day.value) } : {}),
    ...(read?.unseen ? { unseen: read.unseen } : {}),
    bridges: bridged,
    ...(freeLength ? { freeLength } : {}),
    ...(freeLength && toBear && freeLength.value > 0
      ? { strain: trace.figure('strain', filmStrain, { opening: toBear, freeLength }) }
      : {}),
    handling,
    planned: plannedFor(around, line.id, kind, handling),
    ...(change ? { change } : {}),
    winter: winterOf(line.id, kind, state, handling, winter, read?.unseen),
  };
}

function slabOf(measure: AreaMeasure, drawn: DrawnArea, line: Line, trace: Trace): Figure<'m'> | undefined {
  const others = (drawn.joints ?? []).filter((one) => one.id !== line.id).map(pointsOf);
  const reach = reachOf(pointsOf(line), measure.outline, others);
  if (!reach) return undefined;
  const side = (name: string, value: number): Known<'m'> =>
    trace.given(name, { value, unit: 'm', origin: 'reading', where: measure.name, shows: 'length' });
  return trace.figure('slab-length', slabAtJoint, {
    oneSide: side('one-side', reach[0]),
    otherSide: side('other-side', reach[1]),
  });
}

/** A film crosses what moves only where a coat was shown to bear it; an isolation joint is the building's and stays. */
function handlingOf(
  kind: CrackPlan['kind'],
  state: CrackPlan['state'],
  bridged: CrackPlan['bridges']['answer'],
): CrackHandling {
  if (kind === 'isolation') return 'honour and re-cut';
  if (state === 'dormant') return 'fill rigid';
  if (bridged === 'yes') return 'reinforce';
  return state === 'moving' ? 'honour and re-cut' : 'fill flexible';
}

/**
 * What the tasks of this option do with it: the handling, unless nothing may be cut yet or somebody chose to coat over
 * it all the same. Hard wheels break a film over any joint, so there even one that is bridged is cut again.
 */
function plannedFor(
  { ctx, surveyed }: Around,
  id: string,
  kind: CrackPlan['kind'],
  handling: CrackHandling,
): CrackPlan['planned'] {
  if (surveyed.cutting === 'held') return 'held';
  const wheels = kind !== 'crack' && ctx.job.use?.traffic === 'forklift';
  if (handling === 'honour and re-cut' || wheels)
    return kind !== 'isolation' && ctx.option.coatOver?.includes(id) ? 'filled and coated over' : 're-cut and filled';
  return handling === 'reinforce' ? 'filled and reinforced' : 'filled';
}

/** Ids under which a price book may price a handling, per metre or foot. */
const CHANGES: Readonly<Record<CrackHandling, string>> = {
  'fill rigid': 'crack-fill-rigid',
  'fill flexible': 'crack-fill-flexible',
  reinforce: 'crack-reinforce',
  'honour and re-cut': 'joint-recut',
};

const changeFor = ({ priceBook }: OptionContext, handling: CrackHandling): string | undefined =>
  priceBook?.changes?.find(({ id }) => id === CHANGES[handling])?.id;

/** What the customer will see in the first winter. */
function winterOf(
  id: string,
  kind: CrackPlan['kind'],
  state: CrackPlan['state'],
  handling: CrackHandling,
  opening: Figure<'m'> | undefined,
  unseen: Figure<'m'> | undefined,
): Said {
  const names = { line: id, kind: `@cracks-kind-${kind}` };
  if (state === 'dormant')
    return unseen
      ? { code: 'cracks-winter-still', figures: { unseen: unseen.id }, names }
      : { code: 'cracks-winter-said-still', names };
  const shows = handling === 'reinforce' ? 'bridged' : handling === 'honour and re-cut' ? 'open' : 'line';
  return opening
    ? { code: `cracks-winter-${shows}`, figures: { opening: opening.id }, names }
    : { code: `cracks-winter-${shows}-unsized`, names };
}
