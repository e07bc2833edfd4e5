import type { ReactNode } from 'react';
import { VerdictMark } from '../marks/verdict-mark.tsx';
import { useStep } from '../steps/step-view.tsx';
import { momentText } from '../when.ts';
import { answered } from '../worker/plan-types.ts';
import { WorkingLink } from '../working/working-link.tsx';
import type { CompareView, Measured, SystemShown } from './api.ts';
import { Bar } from './bars.tsx';
import { scaled, single } from './scale.ts';
import { words } from './words.ts';

const w = words.rows;
const MOST = 4;
export const letterOf = (i: number): string => String.fromCharCode(65 + i);

export const verdictOf = ({ fits, cautions }: SystemShown) =>
  fits === 'yes'
    ? cautions.length > 0
      ? ('caution' as const)
      : ('go' as const)
    : fits === 'no'
      ? 'stop'
      : 'not known';

/** Systems that may be laid beside each other: what the slab makes equal first, then each number on one scale. */
export function SystemsTable({ view }: { readonly view: CompareView }) {
  const { plan } = useStep();
  // What only comes too late keeps its numbers: a later day may be agreed on.
  const shown = view.systems.filter(({ fits, hours }) => fits !== 'no' || hours !== undefined).slice(0, MOST);
  if (shown.length === 0) return null;
  const pullOff = answered(plan.survey) ? plan.survey.pullOff?.least : undefined;
  const numbers = (
    pick: (one: SystemShown) => Measured | undefined,
    below: (one: SystemShown) => ReactNode = () => null,
  ): readonly ReactNode[] => {
    const bars = scaled(shown.map((one) => single(pick(one)?.value)));
    return shown.map((one, i) => {
      const found = pick(one);
      return (
        <>
          <Bar bar={bars[i] ?? null} hatched={!found} />
          <b>{found?.text ?? words.unknown}</b>
          {below(one)}
        </>
      );
    });
  };
  const rows: readonly { readonly name: string; readonly note: string; readonly cells: readonly ReactNode[] }[] = [
    ...(pullOff
      ? [
          {
            name: w.slab,
            note: w.slabNote,
            cells: shown.map(() => (
              <>
                <Bar bar={[1, 1]} />
                <WorkingLink id={pullOff} />
              </>
            )),
          },
        ]
      : []),
    {
      name: w.fits,
      note: '',
      cells: shown.map((one) => (
        <>
          <VerdictMark verdict={verdictOf(one)} />{' '}
          {verdictOf(one) === 'caution' ? words.withCare : words.fits[one.fits]}
          <small>{one.front ? words.mark.front : one.beatenBy ? words.mark.beaten(one.beatenBy) : ''}</small>
          {one.reason ? <small>{one.reason}</small> : null}
          {one.cautions.length > 0 ? <Cautions lines={[...one.cautions, ...one.unknown]} /> : null}
        </>
      )),
    },
    { name: w.price, note: `${w.priceNote}, ${w.less}`, cells: numbers(({ price }) => price) },
    { name: w.hours, note: `${w.hoursNote}, ${w.less}`, cells: numbers(({ hours }) => hours) },
    {
      name: w.use(view.use),
      note: `${w.useNote[view.timesFrom]}, ${w.less}`,
      cells: numbers(
        ({ untilUse }) => untilUse,
        ({ starts, ready }) =>
          starts && ready ? <small>{w.dates(momentText(starts), view.use, momentText(ready))}</small> : null,
      ),
    },
    {
      name: w.margin,
      note: w.marginNote,
      cells: numbers(
        ({ margin }) => margin && { ...margin, text: `${margin.text} ${margin.need}` },
        ({ margins }) => (margins.length > 1 ? <Margins all={margins} /> : null),
      ),
    },
    { name: w.layers, note: '', cells: shown.map(({ layers }) => layers.join(', ')) },
  ];
  return (
    <Table
      title={words.title}
      heads={shown.map(({ name }, i) => [letterOf(i), name] as const)}
      rows={rows.map((row) => ({ ...row, key: row.name }))}
    />
  );
}

/** Every margin that can be stated, opened on demand. */
function Margins({ all }: { readonly all: SystemShown['margins'] }) {
  return (
    <details>
      <summary>{words.margins(all.length)}</summary>
      <ul>
        {all.map(({ need, at, text }) => (
          <li key={need}>
            {need} <b>{text}</b>
            {at ? <small> {at}</small> : null}
          </li>
        ))}
      </ul>
    </details>
  );
}

/** Why it is laid with care only, opened on demand: sentences are longer than a column. */
function Cautions({ lines }: { readonly lines: readonly string[] }) {
  return (
    <details>
      <summary>{words.why(lines.length)}</summary>
      <ul>
        {[...new Set(lines)].map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </details>
  );
}

interface TableProps {
  readonly title: string;
  readonly heads: readonly (readonly [letter: string, name: string])[];
  readonly rows: readonly {
    readonly key: string;
    readonly name: string;
    readonly note: string;
    readonly cells: readonly ReactNode[];
  }[];
}

/** One column a system or sheet; on a narrow screen its values stand under each other with their letter. */
export function Table({ title, heads, rows }: TableProps) {
  return (
    <table className="like">
      <thead>
        <tr>
          <th scope="col">{title}</th>
          {heads.map(([letter, name]) => (
            <th scope="col" key={letter}>
              <b>{letter}</b> <small>{name}</small>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ key, name, note, cells }) => (
          <tr key={key}>
            <th scope="row">
              {name}
              {note ? <small>{note}</small> : null}
            </th>
            {cells.map((cell, i) => (
              <td key={heads[i]?.[0]} data-letter={heads[i]?.[0]}>
                {cell}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
