import type { CauseShare, RangeMark } from '../worker/api.ts';
import { inputName } from './names.ts';

const WIDTH = 216;
const LEFT = 14;
const RIGHT = WIDTH - 14;

/** The range a law holds for, with a dot where this job is. */
export function RangeLine({ range }: { readonly range: RangeMark }) {
  const { name, least, most, value, at } = range;
  const x = LEFT + Math.max(-0.05, Math.min(1.05, at)) * (RIGHT - LEFT);
  const out = at < 0 || at > 1;
  return (
    <figure className="range">
      <figcaption>
        {inputName(name)} <b>{value}</b>
      </figcaption>
      <svg width={WIDTH} height="34" viewBox={`0 0 ${WIDTH} 34`} role="img" aria-label={`${least} – ${most}`}>
        <rect x="0" y="5" width={LEFT} height="12" fill="url(#wrong)" />
        <rect x={RIGHT} y="5" width={WIDTH - RIGHT} height="12" fill="url(#wrong)" />
        <path d={`M${LEFT} 11H${RIGHT}M${LEFT} 4v14M${RIGHT} 4v14`} stroke="var(--ink)" strokeWidth="2" />
        <circle
          cx={x}
          cy="11"
          r="5.5"
          fill={out ? 'var(--stop)' : 'var(--chalk)'}
          stroke="var(--sheet)"
          strokeWidth="1.5"
        />
        <text x={LEFT - 8} y="31" className="nq">
          {least}
        </text>
        <text x={RIGHT + 8} y="31" textAnchor="end" className="nq">
          {most}
        </text>
      </svg>
    </figure>
  );
}

/** Shares of the uncertainty by what causes it, the largest dark. */
export function CauseBars({ causes }: { readonly causes: readonly CauseShare[] }) {
  return (
    <ul className="causes">
      {causes.slice(0, 5).map(({ cause, share }, i) => (
        <li key={cause}>
          <span>{cause.split('.').slice(-2).join(' ').replaceAll('-', ' ')}</span>
          <svg width="90" height="12" viewBox="0 0 90 12" aria-hidden="true">
            <rect width={Math.max(share * 90, 1)} height="12" fill={i === 0 ? 'var(--ink)' : 'var(--slab-deep)'} />
          </svg>
          <span>{`${Math.round(share * 100)} %`}</span>
        </li>
      ))}
    </ul>
  );
}
