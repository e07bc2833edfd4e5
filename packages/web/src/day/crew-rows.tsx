import { words } from '../words.ts';
import type { Block } from './day-hours.ts';
import type { DayFrame, DayRow } from './frame.ts';
import { fitting, rowName, shownPart } from './row-parts.tsx';
import { clock } from './scale.ts';

/** What each hand does, hour by hour, and where it waits. */

const ROW = 22;

function Work({ block, frame, top }: { readonly block: Block; readonly frame: DayFrame; readonly top: number }) {
  const part = shownPart(frame, block.from, block.until);
  if (!part) return null;
  const { x, width } = part;
  const { offset } = frame.data;
  const text = fitting(block.text, width - 6);
  const middle = top + (ROW - 4) / 2;
  return (
    <g>
      <title>{`${clock(block.from, offset)}–${clock(block.until, offset)} ${block.text}`}</title>
      {block.is === 'wait' ? (
        <path
          d={`M${x + 2} ${middle}H${x + width - 2}`}
          stroke="var(--quiet)"
          strokeWidth="2"
          strokeDasharray="1.5 4"
        />
      ) : (
        <rect
          x={x}
          y={top}
          width={width}
          height={ROW - 4}
          fill={block.is === 'coat' ? 'var(--chalk-soft)' : 'var(--slab)'}
          stroke={block.is === 'coat' ? 'var(--chalk)' : 'var(--stroke)'}
          strokeWidth="1"
        />
      )}
      {text === '' ? null : (
        <text x={x + width / 2} y={middle + 4} textAnchor="middle" className={block.is === 'wait' ? 'nq halo-s' : 'n'}>
          {text}
        </text>
      )}
    </g>
  );
}

export const crewRows: DayRow = {
  key: 'crew',
  height: ({ data, small }) => (small ? 0 : (data.hours?.hands.length ?? 0) * ROW),
  draw(frame, top) {
    return (
      <>
        {(frame.data.hours?.hands ?? []).map(({ who, blocks }, i) => {
          const y = top + 2 + i * ROW;
          return (
            <g key={who}>
              {rowName(frame, words.day.hand(who), y + 14)}
              {blocks.map((block) => (
                <Work key={block.key} block={block} frame={frame} top={y} />
              ))}
            </g>
          );
        })}
      </>
    );
  },
};
