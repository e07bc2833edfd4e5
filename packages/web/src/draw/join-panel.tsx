import { useId, useState } from 'react';
import { useTarget } from '../edit/form-target.tsx';
import { listAt, removeAt, textAt } from '../edit/path.ts';
import { usePlan } from '../job/job-context.tsx';
import type { Dot } from '../worker/api.ts';
import { useDraw } from './draw-context.tsx';
import { joinRooms, sideIn, wallStretch } from './joins.ts';
import { distance, lengthText, metres } from './lengths.ts';
import { words } from './words.ts';

const w = words.joins;

/** Doors from the room looked at to others: those there are, with what they miss by, and a new one in typed numbers. */
export function JoinPanel() {
  const draw = useDraw();
  if (draw.rooms.length < 2) return null;
  return (
    <section className="group">
      <h3>{w.title}</h3>
      <p className="quiet">{w.note}</p>
      <DoorsHere />
      <NewDoor key={draw.room} />
    </section>
  );
}

function DoorsHere() {
  const draw = useDraw();
  const { root, change } = useTarget();
  const { planned } = usePlan();
  const doors = listAt(root, ['doors']);
  const together = planned?.together;
  const here = textAt(draw.area, ['id']);
  const nameOf = (area: string): string => {
    const room = draw.rooms.find((one) => textAt(one, ['id']) === area);
    return textAt(room, ['name']) || area;
  };
  const overlaps = (together?.overlaps ?? []).filter(({ areas }) => areas.includes(here));
  return (
    <>
      <ul>
        {doors.map((door, i) => {
          const side = sideIn(door, here);
          if (!side) return null;
          const id = textAt(door, ['id']);
          const misses = together?.doors.find((one) => one.id === id)?.misses ?? '';
          const name = w.door(textAt(door, ['name']) || id, nameOf(side.other));
          return (
            <li key={id} className="join">
              <span>
                {name}
                <small>{lengthText(distance(side.from, side.to), draw.units)}</small>
                {misses ? <b>{words.residual(misses)}</b> : null}
              </span>
              <button type="button" className="press" onClick={() => change((draft) => removeAt(draft, ['doors', i]))}>
                {words.remove}
                <span className="unseen"> {name}</span>
              </button>
            </li>
          );
        })}
      </ul>
      {overlaps.map(({ areas, text }) => (
        <p className="wrong" key={areas.join()}>
          {w.overlap(nameOf(areas[0]), nameOf(areas[1]), text)}
        </p>
      ))}
    </>
  );
}

interface Side {
  readonly wall: number;
  readonly behind: string;
}

function NewDoor() {
  const draw = useDraw();
  const { change } = useTarget();
  const id = useId();
  const others = draw.rooms.map((room, i) => ({ room, i })).filter(({ i }) => i !== draw.room);
  const [otherRoom, setOther] = useState(others[0]?.i ?? 0);
  const [mine, setMine] = useState<Side>({ wall: 0, behind: '' });
  const [theirs, setTheirs] = useState<Side>({ wall: 0, behind: '' });
  const [width, setWidth] = useState('');
  const [thick, setThick] = useState('');
  const [wrong, setWrong] = useState(false);
  const other = others.find(({ i }) => i === otherRoom) ?? others[0];
  if (!other) return null;
  const far = draw.outlineOf(other.i);
  const stretch = (outline: readonly Dot[], side: Side) => {
    const [behind, wide] = [metres(side.behind), metres(width)];
    return behind === null || wide === null ? null : wallStretch(outline, side.wall, behind, wide);
  };
  const join = (): void => {
    const [one, two] = [stretch(draw.outline, mine), stretch(far, theirs)];
    setWrong(!one || !two);
    if (!one || !two) return;
    change((draft) =>
      joinRooms(
        draft,
        { area: textAt(draw.area, ['id']), from: one[0], to: one[1] },
        { area: textAt(other.room, ['id']), from: two[0], to: two[1] },
        draw.units,
        thick,
      ),
    );
    setMine({ wall: mine.wall, behind: '' });
    setTheirs({ wall: theirs.wall, behind: '' });
  };
  const example = draw.units === 'imperial' ? '3 ft' : '0.9 m';
  return (
    <form
      className="fields"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        join();
      }}
    >
      <div className="field">
        <label htmlFor={`${id}-other`}>{w.other}</label>
        <select
          id={`${id}-other`}
          value={other.i}
          onChange={(event) => {
            setOther(Number(event.target.value));
            setTheirs({ wall: 0, behind: '' });
          }}
        >
          {others.map(({ room, i }) => (
            <option key={textAt(room, ['id'])} value={i}>
              {textAt(room, ['name'])}
            </option>
          ))}
        </select>
      </div>
      <Text id={`${id}-width`} label={w.width} value={width} example={example} onChange={setWidth} />
      <SideFields label={w.here(textAt(draw.area, ['name']))} outline={draw.outline} side={mine} onChange={setMine} />
      <SideFields label={w.here(textAt(other.room, ['name']))} outline={far} side={theirs} onChange={setTheirs} />
      <Text
        id={`${id}-thick`}
        label={w.wall}
        value={thick}
        example={draw.units === 'imperial' ? '6 in' : '0.15 m'}
        onChange={setThick}
      />
      <div className="field wide">
        {wrong ? (
          <p className="wrong" role="alert">
            {w.wrong}
          </p>
        ) : null}
        <button type="submit" className="press">
          {w.join}
        </button>
      </div>
    </form>
  );
}

interface SideProps {
  readonly label: string;
  readonly outline: readonly Dot[];
  readonly side: Side;
  onChange(side: Side): void;
}

function SideFields({ label, outline, side, onChange }: SideProps) {
  const id = useId();
  const { units } = useDraw();
  if (outline.length < 3) return <p className="field wide">{w.noWalls(label)}</p>;
  return (
    <fieldset className="field wide">
      <legend>{label}</legend>
      <div className="fields">
        <div className="field">
          <label htmlFor={`${id}-wall`}>{w.inWall}</label>
          <select
            id={`${id}-wall`}
            value={side.wall}
            onChange={(event) => onChange({ ...side, wall: Number(event.target.value) })}
          >
            {outline.map((corner, i) => {
              const next = (i + 1) % outline.length;
              const length = lengthText(distance(corner, outline[next] as Dot), units);
              return (
                // biome-ignore lint/suspicious/noArrayIndexKey: walls are told apart by their place in the ring
                <option key={i} value={i}>
                  {`${words.wall(i + 1, next + 1)}, ${length}`}
                </option>
              );
            })}
          </select>
        </div>
        <Text
          id={`${id}-behind`}
          label={w.behind(side.wall + 1)}
          value={side.behind}
          example={units === 'imperial' ? '2 ft' : '0.6 m'}
          onChange={(behind) => onChange({ ...side, behind })}
        />
      </div>
    </fieldset>
  );
}

interface TextProps {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly example: string;
  onChange(text: string): void;
}

function Text({ id, label, value, example, onChange }: TextProps) {
  const bad = value.trim() !== '' && metres(value) === null;
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        autoComplete="off"
        value={value}
        placeholder={example}
        aria-invalid={bad}
        onChange={(event) => onChange(event.target.value)}
      />
      {bad ? <small className="wrong">{words.unreadable}</small> : null}
    </div>
  );
}
