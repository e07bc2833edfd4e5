import type { Published } from '../../plan.ts';
import type { CoatVapour, SafetyPlan } from '../../steps/results.ts';
import { bold, dashes, entry, heading, line, name, type PaperContext, said, say } from '../context.ts';
import type { Block, Content } from '../paper.ts';

const FROM = {
  voc: 'safety-from-voc',
  'not solid': 'safety-from-not-solid',
} as const;

function rowOf(vapour: Published<CoatVapour>): readonly Content[] {
  const unknown = say('paper-not-known');
  const none = vapour.from === 'none' ? name('–') : unknown;
  return [
    bold(vapour.name),
    vapour.solvent ? name(vapour.solvent) : none,
    vapour.liquid ? entry(vapour.liquid) : none,
    vapour.vapour ? entry(vapour.vapour) : none,
    vapour.lowerLimit ? entry(vapour.lowerLimit) : none,
    vapour.share ? { entry: vapour.share, strong: true } : none,
    vapour.air ? entry(vapour.air) : none,
  ];
}

/** Solvent in the air, coat by coat: how much there is to know, and what the average hides. */
export function vapourBlocks(_ctx: PaperContext, safety: Published<SafetyPlan>): readonly Block[] {
  const heads = ['coat', 'solvent', 'liquid', 'vapour', 'lower-limit', 'share', 'air'] as const;
  const how = [...new Set(safety.vapour.map(({ from }) => from))].filter(
    (from): from is 'voc' | 'not solid' => from === 'voc' || from === 'not solid',
  );
  return [
    heading('safety-vapour'),
    line(safety.room ? say('safety-room', {}, { room: safety.room }) : say('safety-room-not-known')),
    {
      kind: 'table',
      columns: heads.map((head, i) => ({
        head: said(`safety-head-${head}`),
        ...(i > 1 ? { align: 'right' as const } : {}),
      })),
      rows: safety.vapour.map(rowOf),
    },
    ...dashes([
      ...how.map((from) => say(FROM[from])),
      ...safety.missing.map(({ fact }) => ({ say: fact })),
      say('safety-vapour-average'),
      say('safety-vapour-floor'),
      say('safety-vapour-health'),
      say('safety-vapour-air-moving'),
      say('safety-vapour-own-entry'),
    ]),
  ];
}
