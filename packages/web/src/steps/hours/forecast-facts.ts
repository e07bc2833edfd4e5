import type { DayPlan, Published } from '@slabwright/core';
import type { Fact } from '../../facts/facts-table.tsx';
import { clockText, momentText } from '../../when.ts';
import { words } from '../../words.ts';
import { answered } from '../../worker/plan-types.ts';
import type { StepView } from '../step-view.tsx';
import { NO_ROOM, roomShown } from './spans.ts';

const w = words.hours;

type Day = Published<DayPlan>;
type Coat = Day['coats'][number];

export const dayOf = ({ option }: StepView): Day | null => {
  const day = option?.day;
  return day && answered(day) ? day : null;
};

const ms = (instant: string): number => Date.parse(instant);

/** The slab while the coat is wet: the limit asks for care or stops, as the reason says. */
function rising({ name, layer, start }: Coat): readonly Fact[] {
  const reason = start?.verdict.reasons.find(({ code }) => code.startsWith('day-window-rising'));
  const { value, bound } = reason?.figures ?? {};
  if (!reason || !value || !bound) return [];
  return [
    {
      key: `${layer}-rising`,
      label: w.warming(name),
      note: w.whileOpen,
      id: value,
      limitId: bound,
      side: 'most',
      ...(reason.verdict === 'caution' ? { dashed: true } : {}),
    },
  ];
}

function least({ planned, option }: StepView, coat: Coat): readonly Fact[] {
  const { layer, name, start } = coat;
  if (!start?.margin || !start.marginAt) return [];
  const shown = planned.banded[start.margin];
  return [
    {
      key: `${layer}-least`,
      label: w.marginWet(name),
      note: w.leastAt(clockText(start.marginAt)),
      id: start.margin,
      limitId: `${option?.id}.hours.gate.${layer}.limit.margin`,
      side: 'least',
      ...(shown ? { shown } : {}),
    },
  ];
}

/** The shortest pot life of the coat beside the time its batches are spread in. */
function pail({ voice }: StepView, { layer, name, pots, laying }: Coat): readonly Fact[] {
  const lives = pots.flatMap(({ time, batch, at }) => (time && voice.has(time) ? [{ time, batch, at }] : []));
  const [shortest] = [...lives].sort((a, b) => (voice.entry(a.time).value ?? 0) - (voice.entry(b.time).value ?? 0));
  if (!shortest) return [];
  const note = w.pailNote(shortest.batch, clockText(shortest.at), voice.show(laying), pots.length);
  return [{ key: `${layer}-pail`, label: w.pail(name), note, id: shortest.time }];
}

/** From the last metre of the next coat to the moment the one below closes. */
function closes(coat: Coat, next: Coat | undefined): readonly Fact[] {
  const closing = coat.milestones.find(({ what }) => what === 'recoat closes')?.first;
  if (!closing || !next?.start) return [];
  const laid = ms(next.start.laid);
  const room = {
    value: ms(closing.at) - laid,
    ...(closing.high ? { low: ms(closing.low) - laid, high: ms(closing.high) - laid } : {}),
  };
  return [
    {
      key: `${coat.layer}-closes`,
      label: w.before(next.name, coat.name),
      note: w.lastFoot(clockText(next.start.laid), clockText(closing.at)),
      shown: roomShown(room),
      limit: NO_ROOM,
      side: 'least',
    },
  ];
}

function promised({ promises }: Day): readonly Fact[] {
  return promises.flatMap(({ what, by, ready }): Fact[] => {
    if (!ready) return [];
    const wish = ms(by);
    const room = {
      value: wish - ms(ready.at),
      ...(ready.high ? { low: wish - ms(ready.high), high: wish - ms(ready.low) } : {}),
    };
    return [
      {
        key: `promise-${what}`,
        label: `${words.day.given_back[what]} ${momentText(ready.at)}`,
        note: words.day.wantedBy(momentText(by)),
        shown: roomShown(room),
        limit: NO_ROOM,
        side: 'least',
        dashed: true,
      },
    ];
  });
}

/** What the hours ahead say of each coat, to be set against its limits. */
export function forecastFacts(view: StepView): readonly Fact[] {
  const day = dayOf(view);
  if (!day) return [];
  return [
    ...day.coats.flatMap((coat, i) => [
      ...rising(coat),
      ...least(view, coat),
      ...pail(view, coat),
      ...closes(coat, day.coats[i + 1]),
    ]),
    ...promised(day),
  ];
}
