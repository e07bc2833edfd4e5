import { useId, useRef, useState } from 'react';
import { useTarget } from '../edit/form-target.tsx';
import { removeAt, setAt } from '../edit/path.ts';
import { useDraw } from './draw-context.tsx';
import { DXF_UNITS, type DxfDrawing, type DxfRead, dxfArea, inMetres, outlinesOf } from './dxf.ts';
import { FOOT, typedDot } from './lengths.ts';
import { words } from './words.ts';

const w = words.dxf;
const MOST_CORNERS = 2000;

/** An outline out of a drawing file. A drawing that does not say its unit is asked about, never guessed. */
export function DxfPanel() {
  const draw = useDraw();
  const { change } = useTarget();
  const id = useId();
  const chosen = useRef<HTMLInputElement>(null);
  const [read, setRead] = useState<DxfRead | null>(null);
  const [unit, setUnit] = useState<number | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const open = async (file: File): Promise<void> => {
    setRead(null);
    setWrong(null);
    const text = await file.text();
    const { default: DxfParser } = await import('dxf-parser');
    try {
      const found = outlinesOf((new DxfParser().parseSync(text) ?? {}) as unknown as DxfDrawing);
      setRead(found);
      setUnit(found.unit);
      if (found.outlines.length === 0) setWrong(w.none(file.name));
    } catch (trouble) {
      setWrong(w.unreadable(file.name, trouble instanceof Error ? trouble.message : String(trouble)));
    }
  };
  const size = (units: number): number => DXF_UNITS[units]?.metres ?? 1;
  const take = (index: number): void => {
    const outline = read?.outlines[index];
    if (!outline || unit === null) return;
    const ring = inMetres(outline.ring, size(unit));
    change((draft) => {
      removeAt(draft, [...draw.path, 'tape']);
      setAt(
        draft,
        [...draw.path, 'outline'],
        ring.map((dot) => typedDot(dot, draw.units)),
      );
    });
    draw.chooseCorner(null);
  };
  const areaText = (area: number): string => {
    if (unit === null) return '';
    const square = area * size(unit) ** 2;
    return draw.units === 'imperial' ? `${(square / FOOT ** 2).toFixed(0)} ft²` : `${square.toFixed(1)} m²`;
  };
  const blocks = read?.leftOut.INSERT ?? 0;
  const others = Object.entries(read?.leftOut ?? {}).filter(([kind]) => kind !== 'INSERT');
  return (
    <section className="group">
      <h3>{w.title}</h3>
      <p className="quiet">{w.note}</p>
      <div className="ways-of">
        <button type="button" className="press" onClick={() => chosen.current?.click()}>
          {w.choose}
        </button>
        <input
          ref={chosen}
          className="unseen"
          type="file"
          accept=".dxf"
          tabIndex={-1}
          aria-label={w.choose}
          onChange={(event) => {
            const [file] = event.target.files ?? [];
            event.target.value = '';
            if (file) void open(file);
          }}
        />
      </div>
      {wrong ? (
        <p className="wrong" role="alert">
          {wrong}
        </p>
      ) : null}
      {read && read.outlines.length > 0 ? (
        <>
          <div className="field">
            <label htmlFor={`${id}-unit`}>{read.unit === null ? w.askUnit : w.unit}</label>
            <select
              id={`${id}-unit`}
              value={unit ?? ''}
              onChange={(event) => setUnit(Number(event.target.value) || null)}
            >
              <option value="">{w.unitUnset}</option>
              {Object.entries(DXF_UNITS).map(([key, { name }]) => (
                <option key={key} value={key}>
                  {name}
                </option>
              ))}
            </select>
          </div>
          <ul>
            {read.outlines.slice(0, 12).map(({ layer, ring }, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: outlines are told apart only by their order
              <li key={i}>
                <button
                  type="button"
                  className="press"
                  disabled={unit === null || ring.length > MOST_CORNERS}
                  onClick={() => take(i)}
                >
                  {w.take(layer, ring.length, areaText(dxfArea(ring)))}
                </button>
              </li>
            ))}
          </ul>
        </>
      ) : null}
      {blocks > 0 ? <p>{w.blocks(blocks)}</p> : null}
      {others.length > 0 ? (
        <p className="quiet">{w.others(others.map(([kind, n]) => `${n} ${kind}`).join(', '))}</p>
      ) : null}
    </section>
  );
}
