import { type Fact, FactsTable } from '../../facts/facts-table.tsx';
import { SaidList } from '../../facts/said-list.tsx';
import { StepFrame } from '../../facts/step-frame.tsx';
import { ReasonList } from '../../facts/verdict-block.tsx';
import type { FloorLayer } from '../../floor/floor.tsx';
import { pointsText } from '../../floor/geometry.ts';
import { words } from '../../words.ts';
import { answered } from '../../worker/plan-types.ts';
import { WorkingLink } from '../../working/working-link.tsx';
import { NoOption } from '../no-option.tsx';
import type { Step } from '../step.ts';
import { useStep } from '../step-view.tsx';
import { taskName } from '../task-name.ts';

const w = words.preparation;

function Panel() {
  const { option, voice } = useStep();
  if (!option) return <NoOption />;
  const { preparation } = option;
  if (!answered(preparation)) return <StepFrame step={preparation} />;
  const { target, passes, chosen, tasks, methods, dust, tooling, gate } = preparation;
  const facts: Fact[] = [
    { key: 'profile', label: w.profile, note: w.profileNote[target.from], id: target.least },
    ...(voice.show(target.most) === voice.show(target.least)
      ? []
      : [{ key: 'most', label: w.profile, note: words.facts.atMost(''), id: target.most }]),
    {
      key: 'passes',
      label: w.passes,
      ...(chosen ? { note: voice.word(`preparation-method-${chosen}`) } : {}),
      id: passes,
    },
    ...tasks.map(
      (task): Fact => ({
        key: task.id,
        label: taskName(voice, task.work),
        note: voice.show(task.quantity),
        id: task.time,
      }),
    ),
  ];
  const others = methods.filter(({ method }) => method !== chosen);
  return (
    <StepFrame step={preparation}>
      <FactsTable facts={facts} caption={w.tasks} />
      <ReasonList
        title={w.gate}
        reasons={
          gate.reasons.length === 0
            ? [{ word: gate.word, text: words.verdictBlock.nothing }]
            : gate.reasons.map((reason) => ({ word: reason.verdict, text: voice.say(reason) }))
        }
      />
      {tooling.length > 0 ? <SaidList title={w.tooling} lines={tooling.map((said) => voice.say(said))} /> : null}
      {dust.length > 0 ? <SaidList title={w.dust} lines={dust.map((said) => voice.say(said))} /> : null}
      <section className="notes">
        <h3>{w.methods}</h3>
        <ul>
          {others.map(({ method, fits, why, time }) => (
            <li key={method}>
              <b>{voice.word(`preparation-method-${method}`)}</b> {fits ? w.fits : w.no}
              {time ? (
                <>
                  , <WorkingLink id={time} />
                </>
              ) : null}
              {why.length > 0 ? `. ${why.map((said) => voice.say(said)).join(' ')}` : ''}
            </li>
          ))}
        </ul>
      </section>
    </StepFrame>
  );
}

export const preparation: Step = {
  id: 'preparation',
  title: words.steps.preparation,
  phase: 'desk',
  verdict: ({ option }) => option?.preparation.verdict.word ?? 'not known',
  answer({ option, voice }) {
    const found = option?.preparation;
    if (!found || !answered(found)) return words.verdict['not known'];
    const method = found.chosen ? voice.word(`preparation-method-${found.chosen}`) : w.none;
    return w.answer(method, voice.show(found.target.least), voice.show(found.target.most));
  },
  Panel,
  floor({ option, area, voice }): FloorLayer {
    const found = option?.preparation;
    const chosen = found && answered(found) && found.chosen ? voice.word(`preparation-method-${found.chosen}`) : w.none;
    const note =
      found && answered(found)
        ? w.answer(chosen, voice.show(found.target.least), voice.show(found.target.most))
        : chosen;
    return {
      title: w.floorTitle,
      note,
      under: (frame) =>
        area ? <polygon points={pointsText(frame, area.outline)} fill="url(#lanes)" stroke="none" /> : null,
    };
  },
};
