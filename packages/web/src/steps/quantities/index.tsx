import { type Fact, FactsTable } from '../../facts/facts-table.tsx';
import { StepFrame } from '../../facts/step-frame.tsx';
import type { FloorLayer } from '../../floor/floor.tsx';
import { words } from '../../words.ts';
import { answered } from '../../worker/plan-types.ts';
import { WorkingLink } from '../../working/working-link.tsx';
import { NoOption } from '../no-option.tsx';
import type { Step } from '../step.ts';
import { type StepView, useStep } from '../step-view.tsx';
import { Covered } from './covered.tsx';
import { packName } from './pack-name.ts';

const w = words.quantities;

function coatFacts({ option }: StepView): readonly Fact[] {
  if (!option || !answered(option.quantities)) return [];
  const parts = ['film', 'verticals', 'profile', 'texture', 'porosity'] as const;
  return option.quantities.layers.flatMap(({ layer, name, areas, needed }): Fact[] => [
    { key: layer, label: w.needed(name), id: needed },
    ...areas.flatMap((area) =>
      parts.flatMap((part): Fact[] => {
        const id = area[part];
        return id ? [{ key: `${layer}-${area.area}-${part}`, label: name, note: w[part], id }] : [];
      }),
    ),
  ]);
}

function Panel() {
  const view = useStep();
  const { option, voice } = view;
  if (!option) return <NoOption />;
  const { quantities } = option;
  if (!answered(quantities)) return <StepFrame step={quantities} />;
  return (
    <StepFrame step={quantities}>
      <section className="buying">
        <h3>{w.buy}</h3>
        <ul>
          {quantities.buying.map((line) => (
            <li key={`${line.kind}-${line.item}`}>
              <b>{line.name}</b>
              <span>
                {line.packs.map(({ pack, count }) => (
                  <span key={pack}>
                    <WorkingLink id={count} /> × {packName(voice, line.item, pack)}
                  </span>
                ))}
              </span>
              {line.turns ? <small>{voice.say(line.turns)}</small> : null}
            </li>
          ))}
        </ul>
      </section>
      <FactsTable
        facts={quantities.buying.flatMap(({ item, name, needed, left }): Fact[] => [
          { key: `${item}-need`, label: name, note: w.need, id: needed },
          { key: `${item}-left`, label: name, note: w.left, id: left },
        ])}
        caption={w.stock}
      />
      <FactsTable facts={coatFacts(view)} caption={w.coats} />
      <FactsTable
        facts={quantities.broadcast.flatMap(({ layer, name, thrown, back }): Fact[] => [
          { key: layer, label: name, note: w.thrown, id: thrown },
          ...(back ? [{ key: `${layer}-back`, label: name, note: w.back, id: back }] : []),
        ])}
        caption={w.thrown}
      />
    </StepFrame>
  );
}

export const quantities: Step = {
  id: 'quantities',
  title: words.steps.quantities,
  phase: 'desk',
  verdict: ({ option }) => option?.quantities.verdict.word ?? 'not known',
  answer({ option, voice }) {
    if (!option || !answered(option.quantities)) return words.verdict['not known'];
    const { buying } = option.quantities;
    if (buying.length === 0) return w.none;
    const counts = (kind: 'product' | 'media'): string =>
      buying
        .filter((line) => line.kind === kind)
        .flatMap(({ packs }) => packs.map(({ count }) => voice.show(count)))
        .join(' + ');
    return w.answer(counts('product'), counts('media'));
  },
  Panel,
  floor: (view): FloorLayer => ({
    title: w.floorTitle,
    ...(view.option && answered(view.option.quantities)
      ? { note: view.option.quantities.layers.map(({ name }) => name).join(', ') }
      : {}),
    over: (frame) => <Covered view={view} frame={frame} />,
  }),
};
