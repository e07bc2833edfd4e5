import { StepFrame } from '../../facts/step-frame.tsx';
import type { FloorLayer } from '../../floor/floor.tsx';
import { useActs } from '../../job/job-context.tsx';
import { words } from '../../words.ts';
import { answered } from '../../worker/plan-types.ts';
import { WorkingLink } from '../../working/working-link.tsx';
import { NoOption } from '../no-option.tsx';
import { Covered } from '../quantities/covered.tsx';
import type { Step } from '../step.ts';
import { useStep } from '../step-view.tsx';

const w = words.price;

function Panel() {
  const { option, voice } = useStep();
  const { priceBook } = useActs();
  if (!option) return <NoOption />;
  const { price } = option;
  if (!answered(price)) return <StepFrame step={price} />;
  const sums = [
    [w.direct, price.direct],
    [w.overhead, price.overhead],
    [w.profit, price.profit],
    [w.price, price.price],
    [w.tax, price.tax],
    [w.total, price.total],
    [w.perArea, price.perArea],
    [w.deposit, price.deposit],
  ] as const;
  const [what, count, each, amount] = w.columns;
  return (
    <StepFrame step={price}>
      {priceBook ? null : <p className="line">{w.noBook}</p>}
      {price.lines.length > 0 ? (
        <table className="prices">
          <caption className="unseen">{w.lines}</caption>
          <thead>
            <tr>
              <th scope="col">
                <span className="unseen">{w.lines}</span>
                {what}
              </th>
              <th scope="col">{count}</th>
              <th scope="col">{each}</th>
              <th scope="col">{amount}</th>
            </tr>
          </thead>
          <tbody>
            {price.lines.map((line) => (
              <tr key={line.id}>
                <th scope="row">{voice.name(line.name)}</th>
                <td>
                  <WorkingLink id={line.quantity}>{voice.show(line.quantity)}</WorkingLink>
                </td>
                <td>
                  <WorkingLink id={line.rate}>{voice.show(line.rate)}</WorkingLink>
                </td>
                <td>
                  <WorkingLink id={line.amount}>{voice.show(line.amount)}</WorkingLink>
                </td>
              </tr>
            ))}
          </tbody>
          <tbody className="sums">
            {sums.map(([name, id]) =>
              id ? (
                <tr key={name}>
                  <th scope="row" colSpan={3}>
                    {name}
                  </th>
                  <td>
                    <WorkingLink id={id}>{voice.show(id)}</WorkingLink>
                  </td>
                </tr>
              ) : null,
            )}
          </tbody>
        </table>
      ) : null}
      {price.changes.length > 0 ? (
        <section className="buying">
          <h3>{w.changes}</h3>
          <ul>
            {price.changes.map(({ id, name, amount: by, deducts, trigger }) => (
              <li key={id}>
                <b>{name}</b>
                <span>
                  {deducts ? `${w.less} ` : ''}
                  <WorkingLink id={by}>{voice.show(by)}</WorkingLink>
                </span>
                {trigger ? <small>{trigger}</small> : null}
              </li>
            ))}
          </ul>
        </section>
      ) : null}
    </StepFrame>
  );
}

export const price: Step = {
  id: 'price',
  title: words.steps.price,
  phase: 'desk',
  verdict: ({ option }) => option?.price.verdict.word ?? 'not known',
  answer({ option, voice }) {
    if (!option || !answered(option.price)) return w.none;
    const id = option.price.total ?? option.price.price;
    return id ? voice.show(id) : w.none;
  },
  Panel,
  floor: (view): FloorLayer => ({ title: w.floorTitle, over: (frame) => <Covered view={view} frame={frame} /> }),
};
