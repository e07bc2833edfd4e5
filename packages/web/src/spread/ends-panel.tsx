import { lengthText, metres } from '../draw/lengths.ts';
import { TextInput } from '../edit/text-input.tsx';
import { useJob } from '../job/job-context.tsx';
import { useStep } from '../steps/step-view.tsx';
import { exitIn, stepDoor } from './doors.ts';
import { addTape, moveTape, removeTape, type Tape, type TapeEnd, tapesOf } from './tapes.ts';
import { words } from './words.ts';

const w = words.lines;

interface RoomProps {
  readonly areaId: string;
  /** Several rooms stand below each other: each says which it is. */
  readonly named: boolean;
}

/** Where the film may end: the joints of the drawing, and tape lines to add, move and remove. */
export function EndLines({ areaId, named }: RoomProps) {
  const { planned } = useStep();
  const { file, change, optionId } = useJob();
  const area = planned.areas.find(({ id }) => id === areaId);
  if (!area) return null;
  const tapes = tapesOf(file, optionId, area.id);
  return (
    <section className="end-lines">
      <h3>{named ? `${w.title}: ${area.name}` : w.title}</h3>
      <p className="quiet">{w.note}</p>
      <ul>
        {area.joints.map(({ id }) => (
          <li key={id}>
            <span>{id}</span> <small>{w.joint}</small>
          </li>
        ))}
        {tapes.map((tape, i) => (
          <TapeFields key={tape.id} tape={tape} name={w.tape(i + 1)} />
        ))}
      </ul>
      <button
        type="button"
        className="press"
        onClick={() => change((draft) => addTape(draft, optionId, area, planned.units))}
      >
        {w.add}
      </button>
    </section>
  );
}

function TapeFields({ tape, name }: { readonly tape: Tape; readonly name: string }) {
  const { change, optionId } = useJob();
  return (
    <li className="tape-line">
      <div className="tape-head">
        <b>{name}</b>
        <button
          type="button"
          className="press"
          onClick={() => change((draft) => removeTape(draft, optionId, tape.index))}
        >
          {w.remove(name)}
        </button>
      </div>
      <p className="quiet">{w.drag}</p>
      <Place tape={tape} end="from" name={name} />
      <Place tape={tape} end="to" name={name} />
    </li>
  );
}

function Place({ tape, end, name }: { readonly tape: Tape; readonly end: TapeEnd; readonly name: string }) {
  const { planned } = useStep();
  const { change, optionId } = useJob();
  const typed = tape.line[end];
  const set = (axis: 0 | 1, text: string): void =>
    change((draft) => {
      // A bare number is a length in the unit the reader measures in.
      const plain = /^\s*-?\d+([.,]\d+)?\s*$/.test(text);
      const whole = plain ? `${text.trim()} ${planned.units === 'imperial' ? 'ft' : 'm'}` : text;
      moveTape(draft, optionId, tape.index, end, axis === 0 ? [whole, typed[1]] : [typed[0], whole]);
    }, `tape ${tape.id} ${end} ${axis}`);
  const step = (axis: 0 | 1, by: number): void => {
    const before = metres(typed[axis]);
    if (before !== null) set(axis, lengthText(before + by, planned.units));
  };
  const hand = planned.units === 'imperial' ? 0.1524 : 0.1;
  return (
    <fieldset className="tape-end-fields">
      <legend>{end === 'from' ? w.from : w.to}</legend>
      {([0, 1] as const).map((axis) => {
        const way = axis === 0 ? w.across : w.up;
        const label = `${w.end(name, end === 'from' ? w.from : w.to)}, ${way}`;
        const wrong = metres(typed[axis]) === null;
        return (
          <div key={way}>
            <span className="quiet">{way}</span>
            <button type="button" aria-label={w.less(label)} onClick={() => step(axis, -hand)}>
              −
            </button>
            <TextInput value={`${typed[axis]}`} label={label} invalid={wrong} onEnter={(text) => set(axis, text)} />
            <button type="button" aria-label={w.more(label)} onClick={() => step(axis, hand)}>
              +
            </button>
            {wrong ? (
              <span role="alert" className="wrong">
                {w.off(`${typed[axis]}`)}
              </span>
            ) : null}
          </div>
        );
      })}
    </fieldset>
  );
}

/** Doors: the crew leaves by those that are open. */
export function Doors({ areaId, named }: RoomProps) {
  const { planned } = useStep();
  const { file, change } = useJob();
  const drawn = planned.areas.find(({ id }) => id === areaId);
  const exits = file.areas.find(({ id }) => id === areaId)?.exits ?? [];
  if (!drawn) return null;
  const { title, none, shut: isShut, open, doOpen, doShut, drag, less, more } = words.doors;
  const hand = planned.units === 'imperial' ? 0.3048 : 0.25;
  return (
    <section className="doors">
      <h3>{named ? `${title}: ${drawn.name}` : title}</h3>
      {exits.length === 0 ? <p>{none}</p> : <p className="quiet">{drag}</p>}
      <ul>
        {exits.map(({ id, name = id, shut = false }) => (
          <li key={id}>
            <span>
              {name} <small>{shut ? isShut : open}</small>
            </span>
            {([-1, 1] as const).map((way) => (
              <button
                key={way}
                type="button"
                className="press door-step"
                disabled={shut}
                aria-label={way < 0 ? less(name) : more(name)}
                onClick={() =>
                  change((draft) => stepDoor(draft, drawn, id, way * hand, planned.units), `door ${id} ${way}`)
                }
              >
                {way < 0 ? '−' : '+'}
              </button>
            ))}
            <button
              type="button"
              className="press"
              onClick={() =>
                change((draft) => {
                  const exit = exitIn(draft, areaId, id);
                  if (!exit) return;
                  if (shut) delete exit.shut;
                  else exit.shut = true;
                })
              }
            >
              {shut ? doOpen(name) : doShut(name)}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Doors that lead from one of these rooms into another: shut, the two floors are spread one after the other. */
export function RoomDoors({ areas }: { readonly areas: readonly string[] }) {
  const { file, change } = useJob();
  const { between, shut: isShut, open, doOpen, doShut } = words.doors;
  const doors = (file.doors ?? []).filter(({ sides }) => sides.some(({ area }) => areas.includes(area)));
  if (doors.length === 0) return null;
  return (
    <section className="doors">
      <h3>{between}</h3>
      <ul>
        {doors.map(({ id, name = id, shut = false }) => (
          <li key={id}>
            <span>
              {name} <small>{shut ? isShut : open}</small>
            </span>
            <button
              type="button"
              className="press"
              onClick={() =>
                change((draft) => {
                  const door = draft.doors?.find((one) => one.id === id);
                  if (!door) return;
                  if (shut) delete door.shut;
                  else door.shut = true;
                })
              }
            >
              {shut ? doOpen(name) : doShut(name)}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
