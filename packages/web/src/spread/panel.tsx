import type { StepBase } from '@slabwright/core';
import { FactsTable } from '../facts/facts-table.tsx';
import { MissingFacts, Notes } from '../facts/missing.tsx';
import { Verdict, VerdictHead, Watch } from '../facts/verdict-block.tsx';
import { usePlan } from '../job/job-context.tsx';
import { NoOption } from '../steps/no-option.tsx';
import { useStep } from '../steps/step-view.tsx';
import { clockText } from '../when.ts';
import { words as shared } from '../words.ts';
import { answered } from '../worker/plan-types.ts';
import { WorkingLink } from '../working/working-link.tsx';
import { Batches } from './batches.tsx';
import { type Coat, coatKey, coatMark, coatOn, coatsOf } from './coats.ts';
import { DrawnPanel } from './drawn-panel.tsx';
import { Doors, EndLines, RoomDoors } from './ends-panel.tsx';
import { OwnOrder } from './own-order.tsx';
import { Play } from './play.tsx';
import { LookLonger, SearchTold } from './search-told.tsx';
import { lookAt, useLookedCoat } from './store.ts';
import './spread.css';
import { words } from './words.ts';

const w = words.facts;

export function SpreadPanel() {
  const view = useStep();
  const { option } = view;
  const layer = useLookedCoat();
  if (!option) return <NoOption />;
  const { spread } = option;
  if (!spread) {
    return (
      <VerdictHead word="not yet">
        <Working />
        <SearchTold planned={false} />
      </VerdictHead>
    );
  }
  const coats = coatsOf(view);
  const coat = coatOn(coats, undefined, layer);
  return (
    <div className="spread">
      <Stale />
      <SearchTold planned={(coat?.pours.length ?? 0) > 0} />
      <Verdict verdict={spread.verdict} />
      {coat ? <CoatChoice coats={coats} coat={coat} /> : null}
      {coat && coat.pours.length > 0 ? (
        <>
          <DayPart coat={coat} />
          <EdgeFacts coat={coat} />
          <OpenAssumed coat={coat} />
          <DayBeside coat={coat} />
          <Play coat={coat} />
        </>
      ) : null}
      <Ways step={spread} coats={coats} />
      <Watch verdict={spread.verdict} />
      {coat && coat.pours.length > 0 ? (
        <>
          <Batches coat={coat} />
          <WholeCoat coat={coat} />
          <LookLonger />
        </>
      ) : null}
      {coat ? (
        <>
          {coat.areas.map((area) => (
            <EndLines key={area} areaId={area} named={coat.areas.length > 1} />
          ))}
          {coat.areas.map((area) => (
            <Doors key={area} areaId={area} named={coat.areas.length > 1} />
          ))}
          <RoomDoors areas={coat.areas} />
        </>
      ) : null}
      {coat && coat.pours.length > 0 ? (
        <OwnOrder key={`${coatKey(coat)} ${coat.start} ${coat.laid}`} coat={coat} />
      ) : null}
      {coat ? <DrawnPanel coat={coat} /> : null}
      <MissingFacts step={spread} />
      {answered(spread) ? <Notes step={spread} /> : null}
    </div>
  );
}

function Working() {
  const { spreading } = usePlan();
  return (
    <>
      <p role="status">{spreading.trouble ? words.failed : `${words.working}.`}</p>
      {spreading.trouble ? (
        <button type="button" className="press" onClick={spreading.again}>
          {words.again}
        </button>
      ) : null}
    </>
  );
}

function Stale() {
  const { spreading } = usePlan();
  return (
    <div role="status">
      {spreading.trouble ? (
        <div className="spread-stale">
          <p>{words.failed}</p>
          <button type="button" className="press" onClick={spreading.again}>
            {words.again}
          </button>
        </div>
      ) : spreading.stale ? (
        <p className="spread-stale">{words.stale}</p>
      ) : null}
    </div>
  );
}

function CoatChoice({ coats, coat }: { readonly coats: readonly Coat[]; readonly coat: Coat }) {
  const { voice } = useStep();
  if (coats.length < 2) return null;
  return (
    <fieldset className="coat-choice">
      <legend className="unseen">{words.coat}</legend>
      {coats.map((one) => (
        <label key={coatKey(one)} className={one === coat ? 'now' : ''}>
          <input
            type="radio"
            name="spread-coat"
            className="unseen"
            checked={one === coat}
            onChange={() => lookAt({ layer: coatMark(one), at: null })}
          />
          <b>
            {voice.name(one.name)}
            {one.day ? `, ${words.days.of(one.day.number, one.day.of)}` : ''}
          </b>
          <small>
            {one.start && one.laid
              ? `${clockText(one.start)}–${clockText(one.laid)}, ${words.pours(one.pours.length)}`
              : one.state === 'none found'
                ? words.noneFound
                : words.none}
          </small>
        </label>
      ))}
    </fieldset>
  );
}

/** Where the day's floor ends, and how it meets that of the day before. */
function DayPart({ coat }: { readonly coat: Coat }) {
  const { voice } = useStep();
  const { day, start } = coat;
  if (!day || !start) return null;
  return (
    <section>
      <h3>{words.days.title(day.number, day.of, start.slice(0, 10))}</h3>
      <p>
        <WorkingLink id={day.area} />
      </p>
      {day.says.map((said) => (
        <p key={said.code}>{voice.say(said)}</p>
      ))}
    </section>
  );
}

function WholeCoat({ coat }: { readonly coat: Coat }) {
  const { seamLength, walk, leftOver } = coat;
  return (
    <FactsTable
      caption={w.more}
      facts={[
        ...(seamLength ? [{ key: 'seams', label: w.seams, id: seamLength }] : []),
        ...(walk ? [{ key: 'walk', label: w.walk, id: walk }] : []),
        ...(leftOver ? [{ key: 'left', label: w.left, id: leftOver }] : []),
      ]}
    />
  );
}

function EdgeFacts({ coat }: { readonly coat: Coat }) {
  const { largestAge, openTime, worstPour, workingTime } = coat;
  return (
    <FactsTable
      caption={w.caption}
      facts={[
        ...(largestAge && openTime
          ? [{ key: 'age', label: w.age, note: w.ageNote, id: largestAge, limitId: openTime, side: 'most' as const }]
          : []),
        ...(worstPour && workingTime
          ? [
              {
                key: 'worst',
                label: w.worst(worstPour.pour),
                note: w.worstNote,
                id: worstPour.time,
                limitId: workingTime,
                side: 'most' as const,
              },
            ]
          : []),
      ]}
    />
  );
}

/** An assumed open time is printed under the plan it carries. */
function OpenAssumed({ coat }: { readonly coat: Coat }) {
  const { voice } = useStep();
  const { openFrom, openTime } = coat;
  if (openFrom !== 'assumed' || !openTime || !voice.has(openTime)) return null;
  return (
    <p className="spread-assumed">
      {words.openAssumed}:{' '}
      <i>
        <WorkingLink id={openTime} />
      </i>{' '}
      {shared.facts.assumed}. {words.openAssumedHow}
    </p>
  );
}

const STILL_MS = 5 * 60_000;

/** The day on this sheet counts by rates, so that it follows a hand at once; the pours may know better. */
function DayBeside({ coat }: { readonly coat: Coat }) {
  const { option } = useStep();
  // the rates know of no days: beside the day of a large floor they say nothing
  const day =
    option?.day && !coat.day && answered(option.day)
      ? option.day.coats.find(({ layer }) => layer === coat.layer)
      : null;
  const { start, laid } = coat;
  if (!day?.start || !start || !laid) return null;
  const apart = (a: string, b: string): boolean => Math.abs(Date.parse(a) - Date.parse(b)) >= STILL_MS;
  if (apart(start, day.start.at))
    return <p className="quiet">{words.day.starts(clockText(start), clockText(day.start.at))}</p>;
  if (apart(laid, day.start.laid))
    return <p className="quiet">{words.day.laid(clockText(laid), clockText(day.start.laid))}</p>;
  return null;
}

/** What would lift the verdict: every change that was planned and checked, each once. */
function Ways({ step, coats }: { readonly step: StepBase; readonly coats: readonly Coat[] }) {
  const { voice } = useStep();
  const lifts = step.verdict.reasons.flatMap(({ lift }) => (lift ? [voice.say(lift)] : []));
  const repairs = coats.flatMap((coat) => coat.repairs.map((one) => voice.say(one)));
  const ways = [...new Set([...lifts, ...repairs])];
  const tried = step.notes.filter(({ code }) => code === 'spread-repair-none').map((note) => voice.say(note));
  if (ways.length === 0 && tried.length === 0) return null;
  return (
    <section className="ways">
      <h3>{repairs.length > 0 ? words.ways.title : shared.verdictBlock.lift}</h3>
      <ul>
        {ways.map((way) => (
          <li key={way}>{way}</li>
        ))}
      </ul>
      {tried.map((way) => (
        <p key={way} className="quiet">
          {way}
        </p>
      ))}
    </section>
  );
}
