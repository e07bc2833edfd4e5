import { type FloorFrame, wallRuns } from '../../floor/geometry.ts';
import { words } from '../../words.ts';
import { answered } from '../../worker/plan-types.ts';
import type { StepView } from '../step-view.tsx';

/** What the numbers cover: the floor's net size, and a chalk line along the walls that are coated too. */
export function Covered({ view, frame }: { readonly view: StepView; readonly frame: FloorFrame }) {
  const { area, plan, voice } = view;
  if (!area || !answered(plan.survey)) return null;
  const measured = plan.survey.areas.find(({ id }) => id === area.id);
  if (!measured) return null;
  const net = voice.entry(measured.net);
  const x = (frame.left + frame.right) / 2;
  const y = (frame.top + frame.bottom) / 2;
  const [wall] = measured.verticals;
  return (
    <g>
      {wall ? (
        <path
          d={wallRuns(
            area.outline,
            area.exits.map(({ from, to }) => [from, to] as const),
          )
            .map(([from, to]) => `M${frame.at(from).join(' ')}L${frame.at(to).join(' ')}`)
            .join('')}
          stroke="var(--chalk)"
          strokeWidth={frame.small ? 2 : 3.5}
          strokeLinecap="square"
        />
      ) : null}
      <text x={x} y={y} textAnchor="middle" className={frame.small ? 'nb halo' : 'floor-big halo'}>
        {net.number}
      </text>
      {frame.small ? null : (
        <text x={x} y={y + 20} textAnchor="middle" className="nq halo">
          {`${net.unit} ${words.floor.ofFloor}`}
        </text>
      )}
      {wall && !frame.small ? (
        <text x={frame.left + 14} y={frame.bottom - 14} className="nb chalk halo">
          {words.floor.stems(voice.show(wall.face))}
        </text>
      ) : null}
    </g>
  );
}
