import { useId } from 'react';
import { issuesAt, useTarget } from '../edit/form-target.tsx';
import { insertAt, listAt, type Path, removeAt, setAt, textAt } from '../edit/path.ts';
import { TextInput } from '../edit/text-input.tsx';
import { useDraw } from './draw-context.tsx';
import { lengthText, typedDot } from './lengths.ts';
import { cornerName, cornersOf, emptyTape, type Solved } from './tape.ts';
import { words } from './words.ts';

const w = words.tape;

/** From corners to sides and diagonals and back; undo brings back what was there. */
export function TapeChoice() {
  const draw = useDraw();
  const { change } = useTarget();
  const taped = cornersOf(draw.area).length > 0;
  const toTape = (): void =>
    change((draft) => {
      const count = Math.max(draw.outline.length, 4);
      removeAt(draft, [...draw.path, 'outline']);
      setAt(draft, [...draw.path, 'tape'], emptyTape(count));
    });
  const toCorners = (): void =>
    change((draft) => {
      removeAt(draft, [...draw.path, 'tape']);
      if (draw.outline.length > 2) {
        setAt(
          draft,
          [...draw.path, 'outline'],
          draw.outline.map((dot) => typedDot(dot, draw.units)),
        );
      }
    });
  return (
    <p className="ways-of">
      <button type="button" className="press" onClick={taped ? toCorners : toTape}>
        {taped ? w.toCorners : w.toTape}
      </button>
    </p>
  );
}

export function TapePanel() {
  const draw = useDraw();
  const { change, issues } = useTarget();
  const id = useId();
  const corners = cornersOf(draw.area);
  const path: Path = [...draw.path, 'tape'];
  const measures = listAt(draw.area, ['tape', 'measures']);
  const square = listAt(draw.area, ['tape', 'rightAngles']).map(String);
  const resize = (count: number): void => {
    if (!Number.isInteger(count) || count < 3 || count > 60 || count === corners.length) return;
    change((draft) =>
      setAt(
        draft,
        [...path, 'corners'],
        Array.from({ length: count }, (_, i) => corners[i] ?? cornerName(i)),
      ),
    );
  };
  const set = (at: Path, text: string): void =>
    change((draft) => setAt(draft, [...path, ...at], text), [...path, ...at].join('.'));
  const residual = (index: number): string => {
    const off = draw.solved.is === 'room' ? draw.solved.residuals.get(index) : undefined;
    return off === undefined ? '' : words.residual(offText(off, draw.units));
  };
  return (
    <section className="group corners">
      <h3>{w.title}</h3>
      <p className="quiet">{w.note}</p>
      <SolvedNote solved={draw.solved} corners={corners} />
      {issuesAt(issues, path).map(({ text }) => (
        <p className="wrong" key={text}>
          {text}
        </p>
      ))}
      <div className="field">
        <label htmlFor={`${id}-count`}>{w.count}</label>
        <TextInput
          id={`${id}-count`}
          value={`${corners.length}`}
          mode="numeric"
          onEnter={(text) => resize(Number(text))}
        />
      </div>
      <ol>
        {measures.map((measure, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: half-typed measures have no name of their own yet
          <li key={i}>
            <span className="n">{i + 1}</span>
            {(['from', 'to'] as const).map((end) => (
              <span className="cell" key={end}>
                <label htmlFor={`${id}-${i}-${end}`}>{w[end]}</label>
                <select
                  id={`${id}-${i}-${end}`}
                  value={textAt(measure, [end])}
                  onChange={(event) => set(['measures', i, end], event.target.value)}
                >
                  <option value="" />
                  {corners.map((corner) => (
                    <option key={corner}>{corner}</option>
                  ))}
                </select>
              </span>
            ))}
            <span className="cell">
              <label htmlFor={`${id}-${i}-length`}>{w.length}</label>
              <TextInput
                id={`${id}-${i}-length`}
                value={textAt(measure, ['length'])}
                onEnter={(text) => set(['measures', i, 'length'], text)}
              />
            </span>
            <span className="row-acts">
              <span className="quiet off">{residual(i)}</span>
              <button
                type="button"
                aria-label={w.remove(i + 1)}
                onClick={() => change((draft) => removeAt(draft, [...path, 'measures', i]))}
              >
                {words.remove}
              </button>
            </span>
          </li>
        ))}
      </ol>
      <button
        type="button"
        className="press"
        onClick={() =>
          change((draft) =>
            insertAt(draft, [...path, 'measures'], { from: corners[0] ?? '', to: corners[2] ?? '', length: '' }),
          )
        }
      >
        {w.add}
      </button>
      <fieldset className="field">
        <legend>{w.square}</legend>
        <span className="some">
          {corners.map((corner) => (
            <label className="tick" key={corner}>
              <input
                type="checkbox"
                checked={square.includes(corner)}
                onChange={(event) =>
                  change((draft) => {
                    const next = event.target.checked ? [...square, corner] : square.filter((one) => one !== corner);
                    if (next.length > 0) setAt(draft, [...path, 'rightAngles'], next);
                    else removeAt(draft, [...path, 'rightAngles']);
                  })
                }
              />
              {corner}
            </label>
          ))}
        </span>
      </fieldset>
      <div className="field">
        <label htmlFor={`${id}-error`}>{w.error}</label>
        <TextInput
          id={`${id}-error`}
          value={textAt(draw.area, ['tape', 'error'])}
          example="1/4 in"
          onEnter={(text) =>
            change((draft) => {
              if (text.trim() === '') removeAt(draft, [...path, 'error']);
              else setAt(draft, [...path, 'error'], text);
            })
          }
        />
      </div>
    </section>
  );
}

function SolvedNote({ solved, corners }: { readonly solved: Solved; readonly corners: readonly string[] }) {
  if (solved.is === 'none') return null;
  if (solved.is === 'typing') return <p role="status">{w.typing}</p>;
  if (solved.is === 'room') {
    return <p role="status">{solved.room.redundancy > 0 ? w.checked(solved.room.redundancy) : w.unchecked}</p>;
  }
  const { trouble } = solved;
  const name = ([from, to]: readonly [number, number]): string => `${corners[from] ?? ''}–${corners[to] ?? ''}`;
  return (
    <p className="wrong" role="status">
      {trouble.code === 'tape-room-is-loose' ? w.loose(trouble.diagonals.map(name).join(', ')) : w.doesNotClose}
    </p>
  );
}

/** A residual is small: millimetres or inches to the sixteenth, never more digits than a tape shows. */
export function offText(off: number, units: 'imperial' | 'metric'): string {
  if (units === 'metric') return `${Math.round(Math.abs(off) * 1000)} mm`;
  const text = lengthText(Math.abs(off), units);
  return text === '0 ft' ? '0 in' : text;
}
