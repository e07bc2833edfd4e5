import { Cell } from './cell.tsx';
import { useTarget } from './form-target.tsx';
import { insertAt, listAt, type Path, removeAt, setAt, textAt } from './path.ts';

import { words } from './words.ts';

/** A place on the floor: along the first wall and away from it. */
export function PointInput({ label, path }: { readonly label: string; readonly path: Path }) {
  const { root, change } = useTarget();
  const set = (axis: 0 | 1, text: string): void =>
    change(
      (draft) => {
        if (!Array.isArray(listAt(draft, path)) || listAt(draft, path).length === 0) setAt(draft, path, ['', '']);
        setAt(draft, [...path, axis], text);
      },
      [...path, axis].join('.'),
    );
  return (
    <span className="place">
      {([0, 1] as const).map((axis) => (
        <Cell
          key={axis}
          name={axis === 0 ? words.along : words.away}
          value={textAt(root, [...path, axis])}
          label={`${label}, ${axis === 0 ? words.along : words.away}`}
          onEnter={(text) => set(axis, text)}
        />
      ))}
    </span>
  );
}

export function PointsInput({
  label,
  path,
  least,
}: {
  readonly label: string;
  readonly path: Path;
  readonly least: number;
}) {
  const { root, change } = useTarget();
  const places = listAt(root, path);
  return (
    <span className="places">
      {places.map((_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: places are told apart only by their order
        <span className="place" key={i}>
          <b>{i + 1}</b>
          <PointInput label={`${label}, ${words.place(i + 1)}`} path={[...path, i]} />
          {places.length > least ? (
            <button
              type="button"
              aria-label={words.removePlace(i + 1)}
              onClick={() => change((draft) => removeAt(draft, [...path, i]))}
            >
              ×
            </button>
          ) : null}
        </span>
      ))}
      <button type="button" className="press" onClick={() => change((draft) => insertAt(draft, path, ['', '']))}>
        {words.addPlace}
      </button>
    </span>
  );
}
