import { useId } from 'react';
import type { Dot } from '../worker/api.ts';
import { useDraw } from './draw-context.tsx';
import { metres } from './lengths.ts';
import { axisOf } from './snap.ts';
import { words } from './words.ts';

const WAYS: readonly (readonly [keyof typeof words.directions, Dot])[] = [
  ['right', [1, 0]],
  ['up', [0, 1]],
  ['left', [-1, 0]],
  ['down', [0, -1]],
];

/** Walls one after the other as somebody walks the room with a tape: a length and a way. */
export function Walk() {
  const draw = useDraw();
  const id = useId();
  const length = metres(draw.nextLength);
  const add = (way: Dot): void => {
    const last = draw.corner ?? draw.outline.length - 1;
    const from = draw.outline[last];
    if (!from) {
      draw.addCorner(-1, [0, 0]);
      return;
    }
    if (length === null || length <= 0) return;
    const [ux, uy] = axisOf(draw.outline);
    const turned: Dot = [way[0] * ux - way[1] * uy, way[0] * uy + way[1] * ux];
    draw.addCorner(last, [from[0] + turned[0] * length, from[1] + turned[1] * length]);
    draw.setNextLength('');
    document.getElementById(id)?.focus();
  };
  const bad = draw.nextLength.trim() !== '' && (length === null || length <= 0);
  return (
    <section className="group walk">
      <h3>{words.walk}</h3>
      <p className="quiet">{words.walkNote}</p>
      <label htmlFor={id}>{words.length}</label>
      <input
        id={id}
        autoComplete="off"
        value={draw.nextLength}
        placeholder={draw.units === 'imperial' ? '12 ft 6 1/2 in' : '3.85 m'}
        aria-invalid={bad}
        aria-describedby={`${id}-hint`}
        onChange={(event) => draw.setNextLength(event.target.value)}
      />
      <p id={`${id}-hint`} className={bad ? 'wrong' : 'quiet'}>
        {bad ? words.unreadable : words.lengthHint}
      </p>
      <div className="ways-of">
        {draw.outline.length === 0 ? (
          <button type="button" className="press" onClick={() => add([0, 0])}>
            {words.first}
          </button>
        ) : (
          WAYS.map(([name, way]) => (
            <button
              type="button"
              className="press"
              key={name}
              disabled={length === null || length <= 0}
              onClick={() => add(way)}
            >
              {words.directions[name]}
            </button>
          ))
        )}
      </div>
    </section>
  );
}
