import { useId, useRef } from 'react';
import { Cell } from '../edit/cell.tsx';
import { TextInput } from '../edit/text-input.tsx';
import { useSize } from '../use-size.ts';
import type { Dot } from '../worker/api.ts';
import { useDraw } from './draw-context.tsx';
import { plainFour } from './homography.ts';
import { type Photo, useTracing } from './photo-context.tsx';
import { words } from './words.ts';

const w = words.photo;

/** A photo or a scanned plan under the drawing: marked by presses or by typed pixels, set to scale by typed lengths. */
export function PhotoPanel() {
  const { photo, map, trouble, choose, drop } = useTracing();
  const chosen = useRef<HTMLInputElement>(null);
  return (
    <section className="group photo">
      <h3>{w.title}</h3>
      <p className="quiet">{w.note}</p>
      {trouble ? (
        <p className="wrong" role="alert">
          {trouble === 'not kept' ? w.notKept : w.notPicture}
        </p>
      ) : null}
      <div className="ways-of">
        <button type="button" className="press" onClick={() => chosen.current?.click()}>
          {photo ? w.another : w.choose}
        </button>
        {photo ? (
          <button type="button" className="press" onClick={drop}>
            {w.drop}
          </button>
        ) : null}
        <input
          ref={chosen}
          className="unseen"
          type="file"
          accept="image/*"
          tabIndex={-1}
          aria-label={w.choose}
          onChange={(event) => {
            const [file] = event.target.files ?? [];
            event.target.value = '';
            if (file) void choose(file);
          }}
        />
      </div>
      {photo ? <Marking photo={photo} /> : null}
      {photo ? <p role="status">{map ? w.set : w.notYet}</p> : null}
    </section>
  );
}

function Marking({ photo }: { readonly photo: Photo }) {
  const { set } = useTracing();
  const { units } = useDraw();
  const id = useId();
  const needed = photo.way === 'length' ? 2 : 4;
  const marks = photo.marks.slice(0, needed);
  const put = (index: number, dot: Dot): void => {
    const next = [...marks];
    next[index] = [Math.round(dot[0]), Math.round(dot[1])];
    set({ marks: next });
  };
  const setMark = (index: number, axis: 0 | 1, text: string): void => {
    const value = Number(text);
    if (text.trim() === '' || !Number.isFinite(value)) return;
    const before = marks[index] ?? [0, 0];
    put(index, axis === 0 ? [value, before[1]] : [before[0], value]);
  };
  const type = (index: number, text: string): void => {
    const next = [...photo.typed];
    while (next.length <= index) next.push('');
    next[index] = text;
    set({ typed: next });
  };
  const example = units === 'imperial' ? '20 ft' : '6 m';
  return (
    <>
      <fieldset className="field">
        <legend>{w.way}</legend>
        {(['length', 'four'] as const).map((way) => (
          <label className="tick" key={way}>
            <input
              type="radio"
              name={id}
              checked={photo.way === way}
              onChange={() => set({ way, marks: [], typed: [] })}
            />
            {w.ways[way]}
          </label>
        ))}
      </fieldset>
      <p role="status">{marks.length < needed ? w.press(marks.length + 1, needed) : w.marked}</p>
      <Board
        photo={photo}
        marks={marks}
        onPress={(dot) => put(marks.length < needed ? marks.length : needed - 1, dot)}
      />
      {marks.length > 0 ? (
        <button type="button" className="press" onClick={() => set({ marks: [] })}>
          {w.again}
        </button>
      ) : null}
      <div className="fields">
        {Array.from({ length: needed }, (_, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: marks are told apart only by their order
          <fieldset className="field" key={i}>
            <legend>{w.mark(i + 1)}</legend>
            <span className="place">
              {([0, 1] as const).map((axis) => (
                <Cell
                  key={axis}
                  value={marks[i] ? `${marks[i][axis]}` : ''}
                  mode="numeric"
                  label={`${w.mark(i + 1)}, ${w.pixels[axis]}`}
                  name={w.pixels[axis]}
                  onEnter={(text) => setMark(i, axis, text)}
                />
              ))}
            </span>
            {photo.way === 'four' ? (
              <span className="place">
                {([0, 1] as const).map((axis) => (
                  <Cell
                    key={axis}
                    value={photo.typed[2 * i + axis] ?? ''}
                    label={`${w.mark(i + 1)}, ${w.floor[axis]}`}
                    name={w.floor[axis]}
                    onEnter={(text) => type(2 * i + axis, text)}
                  />
                ))}
              </span>
            ) : null}
          </fieldset>
        ))}
        {photo.way === 'length' ? (
          <div className="field">
            <label htmlFor={`${id}-length`}>{w.length}</label>
            <TextInput
              id={`${id}-length`}
              value={photo.typed[0] ?? ''}
              example={example}
              onEnter={(text) => type(0, text)}
            />
          </div>
        ) : null}
      </div>
      {photo.way === 'four' && marks.length === 4 && !plainFour(marks) ? (
        <p className="wrong" role="alert">
          {w.crossed}
        </p>
      ) : null}
    </>
  );
}

interface BoardProps {
  readonly photo: Photo;
  readonly marks: readonly Dot[];
  readonly onPress: (dot: Dot) => void;
}

/** The picture as it was taken, to put marks on. */
function Board({ photo, marks, onPress }: BoardProps) {
  const [ref, size] = useSize<HTMLDivElement>();
  const scale = size ? size.width / photo.width : 0;
  return (
    <div className="board" ref={ref}>
      {scale > 0 ? (
        // biome-ignore lint/a11y/useKeyWithClickEvents: the same marks are typed in the fields below
        <svg
          width={photo.width * scale}
          height={photo.height * scale}
          role="img"
          aria-label={w.board(photo.name)}
          onClick={(event) => {
            const box = event.currentTarget.getBoundingClientRect();
            onPress([(event.clientX - box.left) / scale, (event.clientY - box.top) / scale]);
          }}
        >
          <image href={photo.address} width={photo.width * scale} height={photo.height * scale} />
          <polygon
            points={marks.map(([x, y]) => `${x * scale},${y * scale}`).join(' ')}
            fill="none"
            stroke="var(--chalk)"
            strokeWidth="3"
          />
          {marks.map(([x, y], i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: marks are told apart only by their order
            <g key={i}>
              <circle cx={x * scale} cy={y * scale} r="9" fill="var(--chalk)" stroke="var(--sheet)" strokeWidth="2" />
              <text x={x * scale} y={y * scale + 4.5} textAnchor="middle" className="nb on-chalk">
                {i + 1}
              </text>
            </g>
          ))}
        </svg>
      ) : null}
    </div>
  );
}
