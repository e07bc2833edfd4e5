import { lengthText, metres } from '../draw/lengths.ts';
import { TextInput } from '../edit/text-input.tsx';
import { usePlan } from '../job/job-context.tsx';
import { useStep } from '../steps/step-view.tsx';
import type { Dot } from '../worker/api.ts';
import type { JudgedOrder } from './api.ts';
import { spreadWorker } from './client.ts';
import { askedOf, type Coat, coatKey } from './coats.ts';
import {
  closed,
  type Drawing,
  draw,
  NOTHING_DRAWN,
  numbered,
  plannedNumber,
  retyped,
  swapped,
  undone,
  useDrawing,
  without,
} from './drawn-store.ts';
import { JudgedView } from './own-order.tsx';
import { PhoneFloor } from './play.tsx';
import { words } from './words.ts';

const w = words.drawn;

/** Pours as somebody would cut them, drawn on the floor or typed, and what the checker says of them. */
export function DrawnPanel({ coat }: { readonly coat: Coat }) {
  const { spreading } = usePlan();
  const drawing = useDrawing();
  const own = drawing.coat === coatKey(coat);
  const { option, voice } = useStep();
  const begin = (from: NonNullable<Drawing['from']>): void =>
    draw(() => ({ ...NOTHING_DRAWN, coat: coatKey(coat), from, pours: from.flatMap((ring) => (ring ? [ring] : [])) }));
  /** What has to be mended on the floor before anything can be judged, in the words of the plan. */
  const floorFirst = (): JudgedOrder => {
    const reasons = (option?.spread?.verdict.reasons ?? []).filter(({ names }) => names?.layer === coat.name);
    const breaks = reasons.map((reason) => ({ text: voice.say(reason) }));
    return { ok: false, floor: true, breaks: breaks.length > 0 ? breaks : [{ text: w.floorUnknown }], figures: [] };
  };
  const judge = async (): Promise<void> => {
    const { pours } = drawing;
    const asked = pours.map((ring) => ({ ring, planned: plannedNumber(drawing, ring) }));
    const judged = (await spreadWorker().judgeDrawn(askedOf(coat), asked)) ?? floorFirst();
    draw((before) => (before.pours === pours ? { ...before, judged } : before));
  };
  return (
    <section className="drawn-pours">
      <h3>{w.title}</h3>
      <p className="quiet">{own ? (drawing.from?.length ? `${w.how} ${w.asPlanned}` : w.how) : w.note}</p>
      {own ? null : (
        <p className="own-presses">
          <button type="button" className="press" onClick={() => begin([])}>
            {w.begin}
          </button>
          {coat.pours.length > 0 ? (
            <button type="button" className="press" onClick={() => begin(ringsOf(coat))}>
              {w.fromPlan}
            </button>
          ) : null}
        </p>
      )}
      {own ? (
        <>
          <PhoneFloor coat={coat} />
          <ol className="drawn-list">
            {numbered(drawing.pours).map(({ key, one, at }) => (
              <DrawnPour key={key} ring={one} index={at} last={at === drawing.pours.length - 1} />
            ))}
          </ol>
          <p className="own-presses">
            <button type="button" className="press" disabled={drawing.open.length < 3} onClick={() => draw(closed)}>
              {w.close}
            </button>
            <button
              type="button"
              className="press"
              disabled={drawing.open.length + drawing.pours.length === 0}
              onClick={() => draw(undone)}
            >
              {w.undo}
            </button>
            <button
              type="button"
              className="press"
              disabled={spreading.stale || drawing.pours.length === 0}
              onClick={() => void judge()}
            >
              {w.judge}
            </button>
            <button type="button" className="press" onClick={() => draw(() => NOTHING_DRAWN)}>
              {w.done}
            </button>
          </p>
          <div role="status">
            {drawing.judged ? (
              <JudgedView judged={drawing.judged} good={w.good} bad={drawing.judged.floor ? () => w.floor : w.bad} />
            ) : null}
          </div>
        </>
      ) : null}
    </section>
  );
}

/** Outlines of the plan's own pours to begin with; of a pour in pieces the largest. */
function ringsOf(coat: Coat): NonNullable<Drawing['from']> {
  const size = (ring: readonly Dot[]): number =>
    Math.abs(
      ring.reduce((sum, [x, y], i) => {
        const [nx, ny] = ring[(i + 1) % ring.length] as Dot;
        return sum + x * ny - nx * y;
      }, 0),
    );
  return coat.pours.map(({ outline }) => {
    const [largest] = [...outline].sort((a, b) => size(b) - size(a));
    return largest ?? null;
  });
}

function DrawnPour({
  ring,
  index,
  last,
}: {
  readonly ring: readonly Dot[];
  readonly index: number;
  readonly last: boolean;
}) {
  const { planned } = useStep();
  const name = words.pour(index + 1);
  return (
    <li>
      <details>
        <summary>
          <b>{index + 1}</b> {w.corners(ring.length)}
        </summary>
        <ol className="drawn-corners">
          {numbered(ring).map(({ key, one: [x, y], at: corner }) => (
            <li key={key}>
              {([x, y] as const).map((value, axis) => (
                <TextInput
                  key={axis === 0 ? 'across' : 'up'}
                  value={lengthText(value, planned.units)}
                  label={w.corner(name, corner + 1, axis === 0 ? words.lines.across : words.lines.up)}
                  invalid={false}
                  onEnter={(text) => {
                    const typed = metres(
                      /^\s*-?\d+([.,]\d+)?\s*$/.test(text)
                        ? `${text} ${planned.units === 'imperial' ? 'ft' : 'm'}`
                        : text,
                    );
                    if (typed !== null)
                      draw((before) => retyped(before, index, corner, axis === 0 ? [typed, y] : [x, typed]));
                  }}
                />
              ))}
            </li>
          ))}
        </ol>
      </details>
      <button
        type="button"
        disabled={index === 0}
        aria-label={w.up(name)}
        onClick={() => draw((one) => swapped(one, index, -1))}
      >
        ↑
      </button>
      <button
        type="button"
        disabled={last}
        aria-label={w.down(name)}
        onClick={() => draw((one) => swapped(one, index, 1))}
      >
        ↓
      </button>
      <button type="button" aria-label={w.remove(name)} onClick={() => draw((one) => without(one, index))}>
        ×
      </button>
    </li>
  );
}
