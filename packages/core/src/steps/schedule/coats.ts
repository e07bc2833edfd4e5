import type { Task } from '../results.ts';
import { coatBlock, layout, type Segment, type Stretches } from './layout.ts';
import { type CoatPhase, isRolled } from './phases.ts';

/** A coat with its place in time, ms since 1970. */
export interface Coated {
  readonly phase: CoatPhase;
  /** Start, where one was chosen or found. */
  readonly start?: number;
  /** Last metre of the floor laid; by the work itself where nobody worked it out. */
  readonly laid?: number;
  /** When the film bears what follows: an instant, or so long after the last metre. */
  readonly opens?: number;
  readonly opensAfter?: number;
  /** When it bears the feet and the saw of those who cut the joints: an instant, or so long after the last metre. */
  readonly bears?: number;
  readonly bearsAfter?: number;
}

export interface CoatsLaid {
  readonly segments: readonly Segment[];
  /** Layer that got no place, or one before the work ahead of it is done; what follows is not laid out. */
  readonly stuck?: string;
}

const workOf = (tasks: readonly Task[]): number => tasks.reduce((sum, { time }) => sum + time.value, 0);

/** First to last metre in ms: rolling is one hand's, the rest is shared. */
export const layingOf = (floor: readonly Task[], people: number): number =>
  Math.ceil(Math.max(workOf(floor.filter(isRolled)), workOf(floor) / people)) * 1000;

/** First moment from which a coat of this length fits into one stretch. */
function nextFit(hours: Stretches, from: number, length: number): number | undefined {
  for (const { from: begin, to } of hours) {
    const at = Math.max(begin, from);
    if (at < to && at + length <= to) return at;
  }
  return undefined;
}

/** Coats and what lies between and after them, after the preparation has ended. */
export function coated(
  coats: readonly Coated[],
  crew: { readonly people: number; readonly hours: Stretches },
  prepared: number,
  closing: readonly Task[],
): CoatsLaid {
  const { people, hours } = crew;
  const segments: Segment[] = [];
  let ready = prepared;
  let opens = prepared;
  let between: readonly Task[] = [];
  let bears = prepared;
  for (const coat of coats) {
    const { phase } = coat;
    const before = layout([...between, ...phase.before], people, hours, opens);
    segments.push(...before.segments);
    ready = Math.max(ready, before.end);
    const length = layingOf(phase.floor, people);
    const start = coat.start ?? (coat.opensAfter === undefined ? undefined : nextFit(hours, ready, length));
    if (start === undefined || start < ready) return { segments, stuck: phase.layer };
    const laid = coat.laid ?? start + length;
    segments.push(
      ...coatBlock(
        phase.floor.filter(isRolled),
        phase.floor.filter((task) => !isRolled(task)),
        people,
        start,
        Math.max(laid, start + length),
      ),
    );
    const walls = layout(phase.walls, people, hours, laid);
    segments.push(...walls.segments);
    ready = walls.end;
    opens = Math.max(walls.end, coat.opens ?? laid + (coat.opensAfter ?? 0));
    bears = Math.max(opens, coat.bears ?? laid + (coat.bearsAfter ?? 0));
    between = phase.after;
  }
  if (between.length > 0) {
    const scraped = layout(between, people, hours, opens);
    segments.push(...scraped.segments);
    ready = Math.max(ready, scraped.end);
  }
  // Joints are cut into a film that bears it; packing up waits for nobody.
  const cut = closing.filter(({ work }) => work === 'joint-recut-and-fill');
  const joints = layout(cut, people, hours, Math.max(bears, ready));
  segments.push(...joints.segments);
  const rest = closing.filter(({ work }) => work !== 'joint-recut-and-fill');
  segments.push(...layout(rest, people, hours, cut.length > 0 ? joints.end : ready).segments);
  return { segments };
}
