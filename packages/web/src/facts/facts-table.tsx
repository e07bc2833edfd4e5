import { useVoice } from '../job/job-context.tsx';
import { words } from '../words.ts';
import type { Shown } from '../worker/api.ts';
import { WorkingLink } from '../working/working-link.tsx';
import { LimitLine } from './limit-line.tsx';
import { LIMIT_AT, type Limited, order, type Place, placeOf } from './limit-scale.ts';

/** A fact in a row: what it is, its figure, and where it stands to its limit when it has one. */
export interface Fact {
  readonly key: string;
  readonly label: string;
  readonly note?: string;
  /** The entry, whose working opens. Room between two moments is no entry and comes as `shown` alone. */
  readonly id?: string;
  /** In place of what the entry itself shows. */
  readonly shown?: Shown;
  readonly limitId?: string;
  readonly limit?: Shown;
  readonly side?: 'least' | 'most';
  readonly dashed?: boolean;
}

interface Row {
  readonly fact: Fact;
  readonly shown: Shown;
  readonly limited: Limited | null;
  readonly place: Place | null;
}

function rowsOf(facts: readonly Fact[], voice: ReturnType<typeof useVoice>): readonly Row[] {
  return facts.flatMap((fact): Row[] => {
    const { limitId, side = 'least', dashed, id } = fact;
    const shown = fact.shown ?? (id !== undefined && voice.has(id) ? voice.entry(id) : undefined);
    if (!shown) return [];
    const limit = fact.limit ?? (limitId !== undefined && voice.has(limitId) ? voice.entry(limitId) : undefined);
    if (!limit) return [{ fact, shown, limited: null, place: null }];
    const limited = { value: shown, limit, side, ...(dashed ? { dashed } : {}) };
    return [{ fact, shown, limited, place: placeOf(limited) }];
  });
}

function FactRow({ row, near, line }: { readonly row: Row; readonly near: boolean; readonly line: boolean }) {
  const { fact, shown, limited, place } = row;
  // Room between two moments is counted from its limit: nothing more to say.
  const limitText =
    limited && !fact.limit
      ? (fact.side === 'most' ? words.facts.atMost : words.facts.atLeast)(limited.limit.text)
      : null;
  const note = [fact.note, limitText].filter(Boolean).join(', ');
  return (
    <tr className={near ? 'near' : undefined}>
      <th scope="row">
        {fact.label}
        {note ? <small>{note}</small> : null}
      </th>
      <td className={`v${shown.origin === 'assumed' ? ' assumed' : ''}${shown.outside ? ' beyond' : ''}`}>
        {fact.id === undefined ? shown.number : <WorkingLink id={fact.id}>{shown.number}</WorkingLink>}
      </td>
      <td className="u">
        {shown.unit}
        {shown.band ? (
          <>
            {shown.unit ? <br /> : null}
            {shown.band}
          </>
        ) : null}
        {shown.origin === 'assumed' ? <em>{` ${words.facts.assumed}`}</em> : null}
      </td>
      {line ? (
        <td className="l">
          {limited && place ? (
            <div>
              <LimitLine limited={limited} place={place} />
            </div>
          ) : null}
        </td>
      ) : null}
    </tr>
  );
}

/** Facts with their figures; those with a limit share one line, nearest to it first. */
export function FactsTable({ facts, caption }: { readonly facts: readonly Fact[]; readonly caption: string }) {
  const voice = useVoice();
  const rows = rowsOf(facts, voice);
  if (rows.length === 0) return null;
  const line = rows.some(({ place }) => place !== null);
  const sorted = line ? [...rows].sort((a, b) => order(a.place) - order(b.place)) : rows;
  return (
    <table className={`facts-table${line ? ' lined' : ''}`}>
      <caption className="unseen">{caption}</caption>
      <thead>
        <tr>
          <th scope="col" colSpan={3}>
            {line ? words.facts.nearest : caption}
          </th>
          {line ? (
            <td className="l">
              <div>
                <svg width="100" height="20" viewBox="0 0 100 20" aria-hidden="true">
                  <text x={LIMIT_AT} y="15" textAnchor="middle" className="nq">
                    {words.facts.limit}
                  </text>
                  <text x="100" y="15" textAnchor="end" className="nq wide">
                    {words.facts.clear}
                  </text>
                </svg>
              </div>
            </td>
          ) : null}
        </tr>
      </thead>
      <tbody>
        {sorted.map((row, index) => (
          <FactRow key={row.fact.key} row={row} near={line && index === 0 && row.place !== null} line={line} />
        ))}
      </tbody>
    </table>
  );
}
