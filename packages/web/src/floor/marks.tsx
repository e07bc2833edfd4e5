import type { AreaDrawing } from '../worker/api.ts';
import { type FloorFrame, pointsText } from './geometry.ts';

/** What lies in the floor: joints dash-dot, oil and other spots stippled, cracks in ink between their measured points. */
export function Marks({
  area,
  frame,
  small,
}: {
  readonly area: AreaDrawing;
  readonly frame: FloorFrame;
  readonly small: boolean;
}) {
  return (
    <>
      {area.joints.map(({ id, along, kind }) => (
        <polyline
          key={id}
          points={pointsText(frame, along)}
          fill="none"
          stroke="var(--stroke)"
          strokeWidth={small ? 1 : 1.4}
          strokeDasharray={kind === 'isolation' ? '3 3' : '11 3 2 3'}
        />
      ))}
      {area.spots.map(({ id, at, area: size }) => {
        const [x, y] = frame.at(at);
        const radius = Math.max(Math.sqrt(size / Math.PI) * frame.scale, small ? 2 : 5);
        return <circle key={id} cx={x} cy={y} r={radius} fill="url(#oil)" stroke="var(--ink)" strokeWidth=".8" />;
      })}
      {area.cracks.map(({ id, along }) => (
        <polyline
          key={id}
          points={pointsText(frame, along)}
          fill="none"
          stroke="var(--ink)"
          strokeWidth={small ? 1.4 : 2.2}
          strokeLinejoin="round"
        />
      ))}
    </>
  );
}
