import { CompareSection } from '../../compare/compare-section.tsx';
import { type Fact, FactsTable } from '../../facts/facts-table.tsx';
import { StepFrame } from '../../facts/step-frame.tsx';
import type { FloorLayer } from '../../floor/floor.tsx';
import { words } from '../../words.ts';
import { answered, type OptionPlan } from '../../worker/plan-types.ts';
import { NoOption } from '../no-option.tsx';
import type { Step } from '../step.ts';
import { type StepView, useStep } from '../step-view.tsx';
import { Cut } from './cut.tsx';

const w = words.system;

function limitFacts({ plan, option }: StepView & { readonly option: OptionPlan }): readonly Fact[] {
  const { system } = option;
  if (!answered(system) || !answered(plan.survey)) return [];
  const { highest } = plan.survey.moisture;
  const moisture = system.moistureLimit.flatMap(({ method, limit, layer }): Fact[] => {
    const reading = highest.find((one) => one.method === method);
    const name = system.layers.find((one) => one.layer === layer)?.name ?? layer;
    return reading
      ? [
          {
            key: `moisture-${method}`,
            label: words.survey.moisture,
            note: w.moistureRoom(name),
            id: reading.value,
            limitId: limit,
            side: 'most',
          },
        ]
      : [];
  });
  const bond = system.layers.map(({ layer }) => `${option.id}.system.${layer}.bond-need`);
  const { pullOff } = plan.survey;
  const holds: Fact[] = pullOff
    ? [
        {
          key: 'bond',
          label: w.bond,
          note: words.survey.pullOffLeast,
          id: pullOff.least,
          limitId: bond[0] ?? '',
          side: 'least',
        },
      ]
    : [];
  return [...moisture, ...holds];
}

function Panel() {
  const view = useStep();
  const { option } = view;
  if (!option) return <NoOption />;
  const { system } = option;
  if (!answered(system)) return <StepFrame step={system} />;
  const films = system.layers.flatMap(({ layer, name, wet, dry, wetVertical, solids }): Fact[] => [
    { key: `${layer}-wet`, label: w.film(name), id: wet },
    { key: `${layer}-dry`, label: name, note: w.dry, id: dry },
    ...(wetVertical
      ? [{ key: `${layer}-vertical`, label: name, note: words.quantities.verticals, id: wetVertical }]
      : []),
    { key: `${layer}-solids`, label: name, note: w.solids, id: solids },
  ]);
  return (
    <StepFrame
      step={system}
      facts={<FactsTable facts={limitFacts({ ...view, option })} caption={words.facts.nearest} />}
    >
      <CompareSection />
      <FactsTable facts={films} caption={system.name} />
    </StepFrame>
  );
}

export const system: Step = {
  id: 'system',
  title: words.steps.system,
  phase: 'desk',
  verdict: ({ option }) => option?.system.verdict.word ?? 'not known',
  answer({ option }) {
    if (!option || !answered(option.system)) return words.verdict['not known'];
    return option.system.layers.map(({ name }) => name).join(', ');
  },
  Panel,
  floor: (view): FloorLayer => ({
    title: w.floorTitle,
    note: w.floorNote,
    bare: true,
    over: (frame) => <Cut view={view} frame={frame} />,
  }),
};
