import type { FloorFrame } from '../../floor/geometry.ts';
import { words } from '../../words.ts';
import { answered } from '../../worker/plan-types.ts';
import type { StepView } from '../step-view.tsx';

const w = words.system;

/** The cut through the floor, drawn over the plan: each coat a band, from the concrete up. Thickness is not to scale. */
export function Cut({ view, frame }: { readonly view: StepView; readonly frame: FloorFrame }) {
  const { option, voice } = view;
  if (!option || !answered(option.system) || frame.bottom - frame.top < 150) return null;
  const { layers } = option.system;
  const broadcast = answered(option.quantities) ? option.quantities.broadcast : [];
  const row = Math.min(44, (frame.bottom - frame.top - 90) / Math.max(layers.length, 1));
  const left = frame.left + 18;
  const width = frame.right - frame.left - 36;
  const concrete = frame.bottom - 70;
  return (
    <g>
      <rect
        x={left}
        y={concrete}
        width={width}
        height={52}
        fill="var(--slab-deep)"
        stroke="var(--ink)"
        strokeWidth="1.6"
      />
      <text x={left + 12} y={concrete + 30} className="n halo-deep">
        {w.concrete}
      </text>
      {layers.map(({ layer, name, wet }, i) => {
        const y = concrete - (i + 1) * row;
        const media = broadcast.find((one) => one.layer === layer)?.name;
        return (
          <g key={layer}>
            <rect x={left} y={y} width={width} height={row} fill="var(--sheet)" stroke="var(--ink)" strokeWidth="1.6" />
            {media ? (
              <rect x={left} y={y} width={width} height={7} fill="url(#oil)" stroke="var(--ink)" strokeWidth=".8" />
            ) : null}
            <text x={left + 12} y={y + row / 2 + (media ? 8 : 5)} className="nb">
              {name}
              <tspan className="nq" dx="8" fontWeight="400">
                {media ? w.broadcast(media) : ''}
              </tspan>
            </text>
            <text x={left + width - 12} y={y + row / 2 + (media ? 8 : 5)} textAnchor="end" className="n">
              {`${voice.show(wet)} ${w.wet}`}
            </text>
          </g>
        );
      })}
    </g>
  );
}
