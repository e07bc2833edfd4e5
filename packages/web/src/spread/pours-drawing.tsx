import { useId } from 'react';
import { type FloorFrame, pixels, pointsText } from '../floor/geometry.ts';
import { usePlan } from '../job/job-context.tsx';
import { clockText } from '../when.ts';
import type { AreaDrawing, Dot } from '../worker/api.ts';
import type { CoatCells } from './api.ts';
import { type Coat, cellsFor } from './coats.ts';
import { wayOut, wetEdge } from './front.ts';
import { lanesOf } from './lanes.ts';
import { momentOf, squaresDown, weightOf } from './moments.ts';
import { useMoment } from './store.ts';

interface DrawingProps {
  readonly coat: Coat;
  readonly area: AreaDrawing;
  readonly frame: FloorFrame;
}

const ringText = (frame: FloorFrame, ring: readonly Dot[]): string => `M${pointsText(frame, ring)}Z`;
const lineText = (frame: FloorFrame, [from, to]: readonly [Dot, Dot]): string => {
  const [a, b] = [frame.at(from), frame.at(to)];
  return `M${pixels(a[0])} ${pixels(a[1])}L${pixels(b[0])} ${pixels(b[1])}`;
};
const lineOf = (frame: FloorFrame, dots: readonly Dot[]): string => `M${pointsText(frame, dots)}`;

/** All squares of one pour: its own order holds them side by side. */
function poursPath(frame: FloorFrame, cells: CoatCells, k: number): string {
  const from = cells.pour.indexOf(k);
  return from < 0 ? '' : squaresPath(frame, cells, from, cells.pour.lastIndexOf(k) + 1);
}

/** Squares between two places of the order, as one path. */
function squaresPath(frame: FloorFrame, cells: CoatCells, from: number, until: number): string {
  const side = cells.size * frame.scale;
  let path = '';
  for (let k = from; k < until; k++) {
    const [x, y] = frame.at([cells.x[k] as number, cells.y[k] as number]);
    path += `M${pixels(x - side / 2)} ${pixels(y - side / 2)}h${pixels(side)}v${pixels(side)}h${pixels(-side)}z`;
  }
  return path;
}

/** Pours in two tints, and at a moment of the day what is wet and what is being spread. */
export function PoursUnder({ coat, area, frame }: DrawingProps) {
  const at = useMoment(coat.pours);
  const { spreading } = usePlan();
  const clip = useId();
  const cells = cellsFor(spreading.cells, coat);
  const moment = at === null ? null : momentOf(coat.pours, at);
  const down = cells && at !== null ? squaresDown(cells, at) : 0;
  return (
    <g opacity={spreading.stale ? 0.55 : 1}>
      <clipPath id={clip}>
        <polygon points={pointsText(frame, area.outline)} />
      </clipPath>
      {coat.pours.map(({ pour, outline }, k) => {
        const fill = moment?.spreading === k ? 'var(--chalk-soft)' : k % 2 === 0 ? 'var(--slab)' : 'var(--slab-deep)';
        const rings = outline.map((ring) => ringText(frame, ring)).join('');
        // The outline cuts corners, the squares stop short of slanted walls: together they cover the pour.
        return (
          <g key={pour} clipPath={`url(#${clip})`}>
            <path d={rings} fillRule="evenodd" fill={fill} />
            {cells ? <path d={poursPath(frame, cells, k)} fill={fill} /> : null}
            {moment?.states[k] === 'wet' ? <path d={rings} fillRule="evenodd" fill="url(#wet)" /> : null}
          </g>
        );
      })}
      {cells && down > 0 ? (
        <path d={squaresPath(frame, cells, 0, down)} fill="url(#wet)" clipPath={`url(#${clip})`} />
      ) : null}
    </g>
  );
}

/** Edges, arrows, numbers, stop lines, the way out and the crew, over the floor. */
export function PoursOver({ coat, frame }: DrawingProps) {
  const { spreading } = usePlan();
  const cells = cellsFor(spreading.cells, coat);
  return (
    <g opacity={spreading.stale ? 0.55 : 1}>
      <Ends coat={coat} cells={cells} frame={frame} />
      <Seams coat={coat} cells={cells} frame={frame} />
      <BailOuts coat={coat} frame={frame} />
      {coat.pours.map((pour, k) => (
        <PourMark key={pour.pour} coat={coat} k={k} cells={cells} frame={frame} />
      ))}
      <Crew coat={coat} cells={cells} frame={frame} />
    </g>
  );
}

interface PartProps {
  readonly coat: Coat;
  readonly cells: CoatCells | null;
  readonly frame: FloorFrame;
}

/** Where pours meet on a joint or a tape line: thick, for the film may end there. */
function Ends({ cells, frame }: PartProps) {
  if (!cells || cells.ends.length === 0) return null;
  return <path d={cells.ends.map((line) => lineText(frame, line)).join('')} stroke="var(--ink)" strokeWidth="6" />;
}

const WEIGHTS = {
  easy: { strokeWidth: 1.4, strokeDasharray: '2 3' },
  half: { strokeWidth: 2.6, strokeDasharray: '8 3' },
  tight: { strokeWidth: 4.5 },
} as const;

/** Edges that must tie in: heavier and closer the more of the open time they use. */
function Seams({ coat, cells, frame }: PartProps) {
  const { voice } = usePlan();
  if (!cells || !voice) return null;
  return cells.seams.map(({ pours, lines }) => {
    const found = coat.seams.find((seam) => seam.pours.join() === pours.map((k) => `${k + 1}`).join());
    const share = found && voice.has(found.share) ? (voice.entry(found.share).value ?? 0) : 0;
    return (
      <path
        key={pours.join()}
        d={lines.map((line) => lineText(frame, line)).join('')}
        stroke="var(--ink)"
        fill="none"
        {...WEIGHTS[weightOf(share)]}
      />
    );
  });
}

/** Where to stop if something goes wrong in the pour in hand; all of them would cover the plan. */
function BailOuts({ coat, frame }: Pick<PartProps, 'coat' | 'frame'>) {
  const at = useMoment(coat.pours);
  if (at === null) return null;
  const moment = momentOf(coat.pours, at);
  const now = moment.spreading ?? moment.mixing;
  const found = coat.bailOuts.find(({ pour }) => now !== null && pour === `${now + 1}`);
  if (!found) return null;
  return (
    <path
      d={found.edge.map((line) => lineOf(frame, line)).join('')}
      stroke="var(--stop)"
      strokeWidth="2.4"
      strokeDasharray="10 4 2 4"
      fill="none"
    />
  );
}

function PourMark({ coat, k, cells, frame }: PartProps & { readonly k: number }) {
  const at = useMoment(coat.pours);
  const pour = coat.pours[k];
  if (!pour) return null;
  const state = at === null ? null : momentOf(coat.pours, at).states[k];
  const [x, y] = frame.at(pour.mark);
  const crowded = frame.scale < 14 || coat.pours.length > 12;
  // On the strip of a phone many numbers would only cover the pours.
  if (frame.width < 200 && coat.pours.length > 9) return null;
  const big = frame.width < 200 ? 13 : crowded ? 15 : 26;
  const halo = state === 'being spread' ? 'halo-now' : k % 2 === 0 ? 'halo' : 'halo-deep';
  return (
    <g>
      <Lanes pour={pour} k={k} cells={cells} frame={frame} />
      <text x={x} y={y + big / 3} textAnchor="middle" className={halo} fontSize={big} fontWeight="700">
        {pour.pour}
      </text>
      {crowded || frame.width < 200 ? null : (
        <text x={x} y={y + big / 3 + 15} textAnchor="middle" className={`nq ${halo}`}>
          {state === null
            ? clockText(pour.start)
            : state === 'being spread'
              ? clockText(pour.start)
              : STATE[state ?? 'bare']}
        </text>
      )}
    </g>
  );
}

const STATE = { bare: '', mixing: 'mixing', 'being spread': '', wet: 'wet' } as const;

/** An arrow to each lane; where lanes are too narrow to be told apart, one for the whole pour. */
function Lanes({
  pour,
  k,
  cells,
  frame,
}: Omit<PartProps, 'coat'> & { readonly pour: Coat['pours'][number]; readonly k: number }) {
  const lanes = cells && cells.size * frame.scale >= 11 ? lanesOf(cells, k) : [];
  if (lanes.length === 0)
    return <Arrow from={frame.at(pour.arrow[0] as Dot)} to={frame.at(pour.arrow[1] as Dot)} main />;
  return lanes.map(([from, to]) => <Arrow key={`${from} ${to}`} from={frame.at(from)} to={frame.at(to)} />);
}

function Arrow({ from, to, main = false }: { readonly from: Dot; readonly to: Dot; readonly main?: boolean }) {
  const angle = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const long = main ? 9 : 6;
  const wing = (by: number): string =>
    `${pixels(to[0] - long * Math.cos(angle + by))} ${pixels(to[1] - long * Math.sin(angle + by))}`;
  return (
    <g stroke="var(--chalk)" strokeWidth={main ? 2 : 1} strokeLinejoin="round">
      <path d={`M${pixels(from[0])} ${pixels(from[1])}L${pixels(to[0])} ${pixels(to[1])}`} />
      <path d={`M${wing(0.42)}L${pixels(to[0])} ${pixels(to[1])}L${wing(-0.42)}Z`} fill="var(--chalk)" />
    </g>
  );
}

/** The crew where it works at the moment, its dry way out, and the edge that waits; when all is down, nobody. */
function Crew({ coat, cells, frame }: PartProps) {
  const at = useMoment(coat.pours);
  if (at === null || !cells) return null;
  const down = squaresDown(cells, at);
  const place = Math.min(down, cells.x.length - 1);
  if (place < 0 || momentOf(coat.pours, at).done) return null;
  const [x, y] = frame.at([cells.x[place] as number, cells.y[place] as number]);
  const way = wayOut(cells, place, down);
  return (
    <g pointerEvents="none">
      <path
        d={wetEdge(cells, down)
          .map((line) => lineText(frame, line))
          .join('')}
        stroke="var(--chalk)"
        strokeWidth="4"
        fill="none"
      />
      {way.length > 1 ? (
        <path d={lineOf(frame, way)} stroke="var(--ink)" strokeWidth="2" strokeDasharray="2 5" fill="none" />
      ) : null}
      <circle cx={x} cy={y} r="8" fill="var(--chalk)" stroke="var(--sheet)" strokeWidth="2.5" />
    </g>
  );
}
