import { type Fact, FactsTable } from '../../facts/facts-table.tsx';
import { StepFrame } from '../../facts/step-frame.tsx';
import { ReasonList } from '../../facts/verdict-block.tsx';
import type { FloorLabel, FloorLayer } from '../../floor/floor.tsx';
import { pointsText } from '../../floor/geometry.ts';
import { ExampleWeather } from '../../weather/example-weather.tsx';
import { clockText } from '../../when.ts';
import { words } from '../../words.ts';
import { answered } from '../../worker/plan-types.ts';
import { NoOption } from '../no-option.tsx';
import type { Step } from '../step.ts';
import { type StepView, useStep } from '../step-view.tsx';
import { taskName } from '../task-name.ts';
import { Calendar } from './calendar.tsx';
import { dayOf, forecastFacts } from './forecast-facts.ts';
import { GivenBack, OtherStarts, Promises, WeatherUsed, Windows } from './forecast-parts.tsx';

const w = words.hours;

/** Readings that matter for a coat: the last one before its start and all that follow. */
function readingsFrom({ plan }: StepView, start: string | undefined): readonly number[] {
  if (!answered(plan.survey)) return [];
  const times = plan.survey.margins.map(({ at }) => Date.parse(at));
  const from = start ? times.findLastIndex((time) => time <= Date.parse(start)) : 0;
  return times.map((_, i) => i).slice(Math.max(from, 0));
}

type Worst = 'least' | 'most';

function worstReading(view: StepView, what: string, start: string | undefined, worst: Worst): string | undefined {
  const { voice } = view;
  const known = readingsFrom(view, start)
    .map((i) => `survey.climate.${i}.${what}`)
    .filter((id) => voice.has(id));
  const value = (id: string): number => voice.entry(id).value ?? 0;
  return known.sort((a, b) => (worst === 'least' ? value(a) - value(b) : value(b) - value(a)))[0];
}

function gateFacts(view: StepView): readonly Fact[] {
  const { option, voice } = view;
  if (!option || !answered(option.hours)) return [];
  const names = new Map(answered(option.system) ? option.system.layers.map(({ layer, name }) => [layer, name]) : []);
  const forecast = new Map((dayOf(view)?.coats ?? []).map(({ layer, start }) => [layer, start?.margin]));
  return option.hours.gates.flatMap(({ layer, at, margin }): Fact[] => {
    const name = names.get(layer) ?? layer;
    const gate = `${option.id}.hours.gate.${layer}`;
    const facts: Fact[] = [];
    const add = (key: string, label: string, id: string | undefined, limit: string, side: Worst): void => {
      const limitId = `${gate}.limit.${limit}`;
      if (id && voice.has(limitId)) facts.push({ key: `${layer}-${key}`, label, note: w.fromStart, id, limitId, side });
    };
    // The margin ahead already stands there; this one is of the readings alone.
    if (!forecast.has(layer) || margin !== forecast.get(layer))
      add('margin', w.marginRead(name), margin, 'margin', 'least');
    add('slab', w.slabCold(name), worstReading(view, 'slab', at, 'least'), 'slab-cold', 'least');
    add('humid', w.humid(name), worstReading(view, 'humidity', at, 'most'), 'air-humid', 'most');
    const rate = `${gate}.trend.0.rate`;
    return voice.has(rate) ? [...facts, { key: `${layer}-rate`, label: w.rate(name), id: rate }] : facts;
  });
}

function Panel() {
  const view = useStep();
  const { option, voice } = view;
  if (!option) return <NoOption />;
  const { hours } = option;
  if (!answered(hours)) return <StepFrame step={hours} />;
  const names = new Map(answered(option.system) ? option.system.layers.map(({ layer, name }) => [layer, name]) : []);
  return (
    <StepFrame
      step={hours}
      facts={
        <>
          <FactsTable facts={[...forecastFacts(view), ...gateFacts(view)]} caption={w.gates} />
          <ExampleWeather />
          <OtherStarts />
        </>
      }
    >
      <Promises />
      <Windows />
      <GivenBack />
      <WeatherUsed />
      {option.day ? <Calendar option={option.id} /> : null}
      <ReasonList
        title={w.gates}
        reasons={hours.gates.map(({ layer, at, verdict }) => ({
          word: verdict.word,
          text: w.gate(names.get(layer) ?? layer, words.verdict[verdict.word], at ? clockText(at) : null),
        }))}
      />
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
