import { Cell } from '../edit/cell.tsx';
import { issuesAt, useTarget } from '../edit/form-target.tsx';
import { insertAt, listAt, type Path, setAt, textAt } from '../edit/path.ts';
import { useDraw, wallText } from './draw-context.tsx';
import { metres } from './lengths.ts';
import { words } from './words.ts';

/** The corners as a tape reads them. Every cell takes any unit; the drawing follows. */
export function CornerTable() {
  const draw = useDraw();
  const { change, issues } = useTarget();
  const path: Path = [...draw.path, 'outline'];
  const corners = listAt(draw.area, ['outline']);
  const wrong = issuesAt(issues, path);
  const set = (index: number, axis: 0 | 1, text: string): void =>
    change((draft) => setAt(draft, [...path, index, axis], text), `${path.join('.')}.${index}.${axis}`);
  const readable = corners.every(
    (_, i) => metres(textAt(corners[i], [0])) !== null && metres(textAt(corners[i], [1])) !== null,
  );
  return (
    <section className="group corners">
      <h3>{words.corners}</h3>
      <p className="quiet">{corners.length === 0 ? words.none : words.cornersNote}</p>
      {wrong.map(({ text }) => (
        <p className="wrong" role="alert" key={text}>
          {text}
        </p>
      ))}
      <ol>
        {corners.map((corner, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: corners are told apart only by their order
          <li key={i} className={draw.corner === i ? 'chosen' : ''} onFocus={() => draw.chooseCorner(i)}>
            <span className="n">{i + 1}</span>
            <Cell
              name={words.columns.x}
              value={textAt(corner, [0])}
              label={words.x(i + 1)}
              invalid={metres(textAt(corner, [0])) === null}
              onEnter={(text) => set(i, 0, text)}
            />
            <Cell
              name={words.columns.y}
              value={textAt(corner, [1])}
              label={words.y(i + 1)}
              invalid={metres(textAt(corner, [1])) === null}
              onEnter={(text) => set(i, 1, text)}
            />
            {readable && corners.length > 1 ? (
              <Cell
                name={words.columns.wall}
                value={wallText(draw, i)}
                label={words.wall(i + 1, ((i + 1) % corners.length) + 1)}
                onEnter={(text) => draw.setWall(i, text)}
              />
            ) : (
              <span />
            )}
            <span className="row-acts">
              <button type="button" aria-label={words.addAfter(i + 1)} onClick={() => draw.addCorner(i)}>
                {words.after}
              </button>
              <button type="button" aria-label={words.removeCorner(i + 1)} onClick={() => draw.removeCorner(i)}>
                {words.remove}
              </button>
            </span>
          </li>
        ))}
      </ol>
      <button
        type="button"
        className="press"
        onClick={() => {
          if (readable) draw.addCorner(corners.length - 1);
          else change((draft) => insertAt(draft, path, ['', '']));
        }}
      >
        {words.add}
      </button>
    </section>
  );
}
