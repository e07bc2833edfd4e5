import type { Filler, FillerKind } from '../../catalogue.ts';
import type { Figure, Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { OptionContext } from '../context.ts';
import { fillerOfLine } from '../formulas/cracks.ts';
import type { CrackPlan } from '../results.ts';

/** Groove that is filled, m: a crack chased open, a saw cut filled to its depth. Common practice, no source. */
const GROOVE = {
  crack: { width: 6e-3, depth: 12e-3 },
  joint: { width: 4e-3, depth: 25e-3 },
} as const;

/** A line with the filler it takes; one that is held takes none. */
export function withFiller(line: CrackPlan, trace: Trace): CrackPlan {
  const fillerKind = kindOf(line);
  if (!fillerKind) return line;
  return { ...line, filler: fillerOf(line, trace.within(line.area).within(line.id).within('treatment')), fillerKind };
}

/** Flexible where the plan reckons with movement, rigid where it rests or a strip in the film carries it. */
function kindOf({ planned, handling }: CrackPlan): FillerKind | undefined {
  switch (planned) {
    case 'filled':
      return handling === 'fill rigid' ? 'rigid' : 'flexible';
    case 'filled and reinforced':
      return 'rigid';
    case 'filled and coated over':
    case 're-cut and filled':
      return 'flexible';
    case 'held':
      return undefined;
  }
}

/** The filler of the catalogue that a line takes: the first of its kind. */
export const fillerFor = ({ catalogue }: OptionContext, { fillerKind }: CrackPlan): Filler | undefined =>
  catalogue.fillers?.find(({ kinds }) => kinds.some((kind) => kind === fillerKind));

function fillerOf({ kind, length }: CrackPlan, trace: Trace): Figure<'m³'> {
  const groove = kind === 'crack' ? GROOVE.crack : GROOVE.joint;
  const side = (name: 'width' | 'depth'): Known<'m'> =>
    trace.given(name, {
      value: groove[name],
      unit: 'm',
      origin: 'assumed',
      source: 'hours-common-practice',
      says: 'cracks-groove-assumed',
      shows: 'small-length',
    });
  return trace.figure('filler', fillerOfLine, { length, width: side('width'), depth: side('depth') });
}
