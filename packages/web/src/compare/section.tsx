import type { BondLink, GovernsPlan, Published } from '@slabwright/core';
import { useStep } from '../steps/step-view.tsx';
import { useSize } from '../use-size.ts';
import { answered } from '../worker/plan-types.ts';
import { WorkingLink } from '../working/working-link.tsx';
import { words } from './words.ts';

type Link = Published<BondLink>;

const COAT = 40;
const SLAB = 92;

/** Concrete and coats as they lie, each link with its strength; the weakest known one is marked across. */
export function Section() {
  const { option } = useStep();
  if (!option || !answered(option.governs) || option.governs.links.length === 0) return null;
  return <Drawn governs={option.governs} />;
}

/** Stone in the concrete, always the same. */
const STONES = [
  [0.12, 0.4, 9],
  [0.3, 0.7, 12],
  [0.46, 0.35, 7],
  [0.62, 0.66, 11],
  [0.8, 0.42, 9],
  [0.92, 0.75, 6],
] as const;

function Drawn({ governs }: { readonly governs: Published<GovernsPlan> }) {
  const { voice } = useStep();
  const [ref, size] = useSize<HTMLDivElement>();
  const { links, governing } = governs;
  const coats = links.filter(({ kind }) => kind === 'coat');
  const height = coats.length * COAT + SLAB + 8;
  const width = size ? Math.max(120, Math.min(190, size.width * 0.42)) : 0;
  const topOf = (coat: Link): number => (coats.length - 1 - coats.indexOf(coat)) * COAT + 4;
  const slab = coats.length * COAT + 4;
  const upper = links.filter(({ kind }) => kind === 'interface');
  const lineOf = (link: Link): number =>
    link.kind === 'concrete'
      ? slab + 14
      : link.kind === 'coat'
        ? topOf(link) + COAT / 2
        : slab - upper.indexOf(link) * COAT;
  return (
    <section className="cut" aria-label={words.cut}>
      <h3>
        {words.cut} <small>{words.cutNote}</small>
      </h3>
      <div className="cut-drawing" ref={ref}>
        {width > 0 ? (
          <svg width={width} height={height} role="img" aria-label={words.cutLabel}>
            <rect
              x="1"
              y={slab}
              width={width - 2}
              height={SLAB}
              fill="var(--slab)"
              stroke="var(--ink)"
              strokeWidth="1.6"
            />
            {STONES.map(([x, y, r]) => (
              <ellipse
                key={x}
                cx={x * width}
                cy={slab + 22 + y * (SLAB - 34)}
                rx={r}
                ry={r * 0.7}
                fill="none"
                stroke="var(--stroke)"
              />
            ))}
            {coats.map((coat, i) => (
              <g key={coat.id}>
                <rect
                  x="1"
                  y={topOf(coat)}
                  width={width - 2}
                  height={COAT}
                  fill={i % 2 === 0 ? 'var(--slab-deep)' : 'var(--sheet)'}
                  stroke="var(--ink)"
                  strokeWidth="1.6"
                />
                <text x="10" y={topOf(coat) + COAT / 2 + 5} className={i % 2 === 0 ? 'n halo-deep' : 'n'}>
                  {voice.say(coat.says)}
                </text>
              </g>
            ))}
            <text x="10" y={slab + SLAB - 10} className="n halo">
              {words.concrete}
            </text>
            {links
              .filter(({ id }) => id === governing)
              .map((link) => (
                <path
                  key={link.id}
                  d={`M0 ${lineOf(link)}H${width}`}
                  stroke="var(--chalk)"
                  strokeWidth="4"
                  strokeDasharray="10 5"
                />
              ))}
          </svg>
        ) : null}
        <ol className="links">
          {[...links].reverse().map((link) => (
            <LinkRow key={link.id} link={link} weakest={link.id === governing} />
          ))}
        </ol>
      </div>
      {governs.notes.slice(0, 3).map((note) => (
        <p key={note.code}>{voice.say(note)}</p>
      ))}
    </section>
  );
}

function LinkRow({ link, weakest }: { readonly link: Link; readonly weakest: boolean }) {
  const { voice } = useStep();
  return (
    <li className={weakest ? 'weakest' : ''}>
      <span className={link.strength ? 'swatch' : 'swatch none'} aria-hidden="true" />
      <span>
        {voice.say(link.says)}
        <small>
          {weakest ? `${words.weakest}, ` : ''}
          {words.link[link.from]}
        </small>
      </span>
      <span className="v">{link.strength ? <WorkingLink id={link.strength} /> : '—'}</span>
    </li>
  );
}
