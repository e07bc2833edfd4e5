import { type Fact, FactsTable } from '../../facts/facts-table.tsx';
import { StepFrame } from '../../facts/step-frame.tsx';
import type { FloorLabel, FloorLayer } from '../../floor/floor.tsx';
import type { FloorFrame } from '../../floor/geometry.ts';
import { momentText } from '../../when.ts';
import { words } from '../../words.ts';
import { answered } from '../../worker/plan-types.ts';
import { WorkingLink } from '../../working/working-link.tsx';
import type { Step } from '../step.ts';
import { type StepView, useStep } from '../step-view.tsx';

const w = words.survey;

function floorFacts({ plan }: StepView): readonly Fact[] {
  const { survey } = plan;
  if (!answered(survey)) return [];
  return [
    { key: 'total', label: w.total, id: survey.total },
    ...survey.areas.flatMap((area): Fact[] => [
      { key: `${area.id}-edge`, label: w.edge, note: area.name, id: area.edge },
      ...area.verticals.map(
        ({ id, kind, face }): Fact => ({ key: `${area.id}-${id}`, label: kind, note: area.name, id: face }),
      ),
      ...area.cracks.map(
        ({ id, length, width }): Fact => ({ key: `${area.id}-${id}`, label: w.cracks, note: id, id: width ?? length }),
      ),
      ...area.joints.map(
        ({ id, kind, length }): Fact => ({ key: `${area.id}-${id}`, label: `${kind} joint`, id: length }),
      ),
      ...area.spots.map(
        ({ id, kind, extent }): Fact => ({
          key: `${area.id}-${id}`,
          label: words.spots[kind] ?? kind,
          note: w.spots,
          id: extent,
        }),
      ),
    ]),
    ...(survey.slabAge ? [{ key: 'age', label: w.age, id: survey.slabAge }] : []),
  ];
}

function readingFacts({ plan, option }: StepView): readonly Fact[] {
  const { survey } = plan;
  if (!answered(survey)) return [];
  const limits = option && answered(option.system) ? option.system.moistureLimit : [];
  const bond =
    option && answered(option.system) ? `${option.id}.system.${option.system.layers[0]?.layer}.bond-need` : undefined;
  return [
    ...survey.moisture.highest.map(({ method, value, where }): Fact => {
      const limit = limits.find((one) => one.method === method)?.limit;
      return {
        key: method,
        label: w.moisture,
        note: [method, where].filter(Boolean).join(', '),
        id: value,
        side: 'most',
        ...(limit ? { limitId: limit } : {}),
      };
    }),
    ...(survey.pullOff
      ? [
          {
            key: 'pull-least',
            label: w.pullOffLeast,
            id: survey.pullOff.least,
            side: 'least' as const,
            ...(bond ? { limitId: bond } : {}),
          },
        ]
      : []),
  ];
}

function climateFacts({ plan }: StepView): readonly Fact[] {
  if (!answered(plan.survey)) return [];
  return plan.survey.margins.map(({ at, margin }): Fact => ({ key: at, label: momentText(at), id: margin }));
}

function Panel() {
  const view = useStep();
  const { plan, voice } = view;
  const { survey } = plan;
  if (!answered(survey)) return <StepFrame step={survey} />;
  const uncounted = survey.moisture.tests.filter(({ counts }) => !counts);
  return (
    <StepFrame step={survey} facts={<FactsTable facts={readingFacts(view)} caption={w.readings} />}>
      {uncounted.length > 0 ? (
        <section className="notes">
          <h3>{w.tests}</h3>
          <ul>
            {uncounted.map(({ id, method, where, value, why }) => (
              <li key={id}>
                {[method, where].filter(Boolean).join(', ')} {value ? <WorkingLink id={value} /> : null}{' '}
                <b>{w.doesNotCount}</b>
                {why.length > 0 ? `: ${why.map((said) => voice.say(said)).join(' ')}` : ''}
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      <FactsTable facts={floorFacts(view)} caption={w.area} />
      <p className="line">
        {w.pressure.label}: <b>{w.pressure[survey.moisture.pressureFromBelow]}</b>
      </p>
      <FactsTable facts={climateFacts(view)} caption={w.climate} />
    </StepFrame>
  );
}

/** Where a named point or a place of a reading lies on this area. */
function readingMarks({ plan, area, voice }: StepView) {
  if (!area || !answered(plan.survey)) return [];
  const { tests } = plan.survey.moisture;
  return tests.flatMap(({ where, value }) => {
    const point = area.points.find(({ id }) => id === where);
    return point && value ? [{ at: point.at, text: voice.entry(value).number, id: value }] : [];
  });
}

export function ReadingMarks({
  frame,
  marks,
}: {
  readonly frame: FloorFrame;
  readonly marks: ReturnType<typeof readingMarks>;
}) {
  return marks.map(({ at, text, id }) => {
    const [x, y] = frame.at(at);
    return (
      <g key={id}>
        <path d={`M${x - 6} ${y}h12M${x} ${y - 6}v12`} stroke="var(--chalk)" strokeWidth="2" />
        {frame.small ? null : (
          <text x={x + 10} y={y + 5} className="nb chalk halo">
            {text}
          </text>
        )}
      </g>
    );
  });
}

export function foundLabels({ area, plan, voice }: StepView): readonly FloorLabel[] {
  if (!area || !answered(plan.survey)) return [];
  const measured = plan.survey.areas.find(({ id }) => id === area.id);
  const middle = (along: readonly (readonly [number, number])[]) => along[Math.floor(along.length / 2)] ?? [0, 0];
  const cracks = area.cracks.slice(0, 2).map(({ id, along }): FloorLabel => {
    const found = measured?.cracks.find((one) => one.id === id);
    const length = found ? voice.show(found.length) : '';
    return {
      key: id,
      at: middle(along),
      text: words.floor.crack(length, found?.width ? voice.show(found.width) : null),
    };
  });
  const spots = area.spots.slice(0, 2).map(({ id, kind, at }): FloorLabel => {
    const found = measured?.spots.find((one) => one.id === id);
    return { key: id, at, text: words.spots[kind] ?? kind, ...(found ? { note: voice.show(found.extent) } : {}) };
  });
  const joint = area.joints.at(-1);
  const joints: FloorLabel[] = joint
    ? [
        {
          key: 'joints',
          at: joint.along.at(-1) ?? [0, 0],
          text: words.floor.joints(area.joints.length),
          note: `${joint.kind}`,
        },
      ]
    : [];
  const exits = area.exits.slice(0, 2).map(
    ({ id, name, from, to, shut }): FloorLabel => ({
      key: id,
      at: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2],
      text: name,
      note: shut ? words.floor.shut : words.floor.wayOut,
    }),
  );
  return [...exits, ...joints, ...spots, ...cracks].slice(0, 5);
}

export const survey: Step = {
  id: 'survey',
  title: words.steps.survey,
  phase: 'desk',
  verdict: ({ plan }) => plan.survey.verdict.word,
  answer({ plan, voice }) {
    if (!answered(plan.survey)) return words.verdict['not known'];
    const highest = plan.survey.moisture.highest[0];
    return w.answer(voice.show(plan.survey.total), highest ? voice.show(highest.value) : null);
  },
  Panel,
  floor: (view): FloorLayer => ({
    title: w.floorTitle,
    note: w.floorNote,
    labels: foundLabels(view),
    over: (frame) => <ReadingMarks frame={frame} marks={readingMarks(view)} />,
  }),
};
