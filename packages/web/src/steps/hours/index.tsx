import type { Verdict } from '@slabwright/core';
import { type Fact, FactsTable } from '../../facts/facts-table.tsx';
import { StepFrame } from '../../facts/step-frame.tsx';
import type { FloorLabel, FloorLayer } from '../../floor/floor.tsx';
import { pointsText } from '../../floor/geometry.ts';
import { VerdictMark } from '../../marks/verdict-mark.tsx';
import { clockText } from '../../when.ts';
import { words } from '../../words.ts';
import { answered } from '../../worker/plan-types.ts';
import { NoOption } from '../no-option.tsx';
import type { Step } from '../step.ts';
import { type StepView, useStep } from '../step-view.tsx';
import { taskName } from '../task-name.ts';

const w = words.hours;

function gateFacts({ option, voice, plan }: StepView): readonly Fact[] {
  if (!option || !answered(option.hours) || !answered(plan.survey)) return [];
  const { gates } = option.hours;
  const names = new Map(answered(option.system) ? option.system.layers.map(({ layer, name }) => [layer, name]) : []);
  return gates.flatMap(({ layer, margin }): Fact[] => {
    const name = names.get(layer) ?? layer;
    const at = `${option.id}.hours.gate.${layer}`;
    const reading = (what: string, worst: 'least' | 'most'): string | undefined => {
      const ids =
        plan.survey && answered(plan.survey) ? plan.survey.margins.map((_, i) => `survey.climate.${i}.${what}`) : [];
      const known = ids.filter((id) => voice.has(id));
      return known.sort((a, b) => {
        const by = (voice.entry(a).value ?? 0) - (voice.entry(b).value ?? 0);
        return worst === 'least' ? by : -by;
      })[0];
    };
    const slab = reading('slab', 'least');
    const humid = reading('humidity', 'most');
    return [
      ...(margin
        ? [
            {
              key: `${layer}-margin`,
              label: w.margin(name),
              id: margin,
              limitId: `${at}.limit.margin`,
              side: 'least' as const,
            },
          ]
        : []),
      ...(slab && voice.has(`${at}.limit.slab-cold`)
        ? [
            {
              key: `${layer}-slab`,
              label: w.slabCold(name),
              id: slab,
              limitId: `${at}.limit.slab-cold`,
              side: 'least' as const,
            },
          ]
        : []),
      ...(humid && voice.has(`${at}.limit.air-humid`)
        ? [
            {
              key: `${layer}-humid`,
              label: w.humid(name),
              id: humid,
              limitId: `${at}.limit.air-humid`,
              side: 'most' as const,
              dashed: true,
            },
          ]
        : []),
      ...(voice.has(`${at}.trend.0.rate`)
        ? [{ key: `${layer}-rate`, label: w.rate(name), id: `${at}.trend.0.rate` }]
        : []),
    ];
  });
}

function GateList({
  gates,
}: {
  readonly gates: readonly {
    readonly layer: string;
    readonly at?: string;
    readonly verdict: Verdict;
    readonly name: string;
  }[];
}) {
  return (
    <section className="reasons">
      <h3>{w.gates}</h3>
      <ul>
        {gates.map(({ layer, at, verdict, name }) => (
          <li key={layer}>
            <VerdictMark verdict={verdict.word} />
            <span>
              {name}: <b>{words.verdict[verdict.word]}</b> {at ? clockText(at) : w.noStart}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Panel() {
  const view = useStep();
  const { option, voice } = view;
  if (!option) return <NoOption />;
  const { hours } = option;
  if (!answered(hours)) return <StepFrame step={hours} />;
  const names = new Map(answered(option.system) ? option.system.layers.map(({ layer, name }) => [layer, name]) : []);
  return (
    <StepFrame step={hours}>
      <FactsTable facts={gateFacts(view)} caption={w.gates} />
      <GateList gates={hours.gates.map((gate) => ({ ...gate, name: names.get(gate.layer) ?? gate.layer }))} />
      <FactsTable
        facts={[
          ...(hours.personTime ? [{ key: 'work', label: w.work, id: hours.personTime }] : []),
          { key: 'paid', label: w.paid, id: hours.paidTime },
        ]}
        caption={w.work}
      />
      <FactsTable
        facts={hours.tasks.map(({ id, work, layer, quantity, time }): Fact => {
          const of = layer ? (names.get(layer) ?? layer) : undefined;
          return {
            key: id,
            label: taskName(voice, work),
            note: [of, voice.show(quantity)].filter(Boolean).join(', '),
            id: time,
          };
        })}
        caption={w.tasks}
      />
    </StepFrame>
  );
}

export const hours: Step = {
  id: 'hours',
  title: words.steps.hours,
  phase: 'desk',
  verdict: ({ option }) => option?.hours.verdict.word ?? 'not known',
  answer({ option, voice }) {
    if (!option || !answered(option.hours)) return words.verdict['not known'];
    const { gates, verdict, personTime, paidTime } = option.hours;
    const [first] = gates;
    if (first?.at) return w.answerAt(words.verdict[verdict.word], clockText(first.at));
    return personTime ? w.answer(voice.show(personTime), voice.show(paidTime)) : voice.show(paidTime);
  },
  Panel,
  floor: ({ area }): FloorLayer => {
    const patches = area?.sun ?? [];
    const labels = patches.flatMap(({ id, outline, from, until }): FloorLabel[] => {
      const [first] = outline;
      if (!first) return [];
      const x = outline.reduce((sum, [one]) => sum + one, 0) / outline.length;
      const y = outline.reduce((sum, [, one]) => sum + one, 0) / outline.length;
      return [
        {
          key: id,
          at: [x, y],
          warm: true,
          text: from && until ? words.floor.sunFrom(clockText(from), clockText(until)) : words.floor.sun,
        },
      ];
    });
    const exits = (area?.exits ?? []).slice(0, 3).map(
      ({ id, name, from, to, shut }): FloorLabel => ({
        key: id,
        at: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2],
        text: name,
        note: shut ? words.floor.shut : words.floor.wayOut,
      }),
    );
    return {
      title: w.floorTitle,
      note: w.floorNote,
      labels: [...labels, ...exits],
      under: (frame) =>
        patches.map(({ id, outline }) => (
          <polygon key={id} points={pointsText(frame, outline)} fill="url(#sun)" stroke="var(--warm)" strokeWidth="1" />
        )),
    };
  },
};
