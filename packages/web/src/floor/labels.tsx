import type { Dot } from '../worker/api.ts';
import { type FloorFrame, pixels, spreadLabels } from './geometry.ts';
import type { FloorLabel, FloorLayer } from './layer.ts';

/** Width of the column beside the floor. */
export const LABEL_COLUMN = 172;
export const LABEL_GAP = 38;

/** What the drawing shows. */
export function Title({ layer, x }: { readonly layer: FloorLayer | null; readonly x: number }) {
  if (!layer) return null;
  return (
    <>
      <text x={x} y="24" className="floor-title">
        {layer.title}
      </text>
      {layer.note ? (
        <text x={x} y="41" className="nq">
          {layer.note}
        </text>
      ) : null}
    </>
  );
}

/** Notes in one column beside the floor, each with its leader. */
export function Beside({ labels, frame }: { readonly labels: readonly FloorLabel[]; readonly frame: FloorFrame }) {
  const x = frame.width - LABEL_COLUMN;
  const anchors = labels.map(({ at }) => frame.at(at));
  const places = spreadLabels(
    anchors.map(([, y]) => y),
    LABEL_GAP,
    72,
    frame.height - 74,
  );
  return (
    <>
      {labels.map((label, i) => {
        const [ax, ay] = anchors[i] as Dot;
        const y = places[i] as number;
        return (
          <g key={label.key}>
            <path
              d={`M${pixels(ax)} ${pixels(ay)}L${x - 24} ${pixels(y)}H${x - 8}`}
              stroke="var(--quiet)"
              fill="none"
              pointerEvents="none"
            />
            <circle cx={ax} cy={ay} r="2.2" fill="var(--ink)" pointerEvents="none" />
            <text x={x} y={y + 4} className={label.warm ? 'nb heat' : 'n'}>
              {label.text}
            </text>
            {label.note ? (
              <text x={x} y={y + 19} className="nq">
                {label.note}
              </text>
            ) : null}
          </g>
        );
      })}
    </>
  );
}

/** On a narrow sheet: letters on the floor, what they stand for under it. */
export function Below({ labels, frame }: { readonly labels: readonly FloorLabel[]; readonly frame: FloorFrame }) {
  const top = frame.height - labels.length * LABEL_GAP - 40;
  return (
    <>
      {labels.map((label, i) => {
        const [ax, ay] = frame.at(label.at);
        const letter = String.fromCharCode(97 + i);
        const y = top + i * LABEL_GAP;
        return (
          <g key={label.key}>
            <text x={ax + 5} y={ay - 5} className="nb halo">
              {letter}
            </text>
            <circle cx={ax} cy={ay} r="2.6" fill="var(--ink)" pointerEvents="none" />
            <text x="16" y={y} className={label.warm ? 'nb heat' : 'n'}>
              {`${letter}  ${label.text}`}
            </text>
            {label.note ? (
              <text x="16" y={y + 15} className="nq">
                {label.note}
              </text>
            ) : null}
          </g>
        );
      })}
    </>
  );
}
