import { words } from '../words.ts';
import type { Block } from './day-hours.ts';
import type { DayFrame, DayRow } from './frame.ts';
import { fitting, rowName, shownPart } from './row-parts.tsx';
import { clock } from './scale.ts';

/** What each hand does, hour by hour, and where it waits. */

const ROW = 22;
const LOW = 11;

const tall = ({ dense }: DayFrame): number => (dense ? LOW : ROW);

function Work({ block, frame, top }: { readonly block: Block; readonly frame: DayFrame; readonly top: number }) {
  const part = shownPart(frame, block.from, block.until);
  if (!part) return null;
  const { x, width } = part;
  const { offset } = frame.data;
  const row = tall(frame);
  const text = frame.dense ? '' : fitting(block.text, width - 6);
  const middle = top + (row - (frame.dense ? 2 : 4)) / 2;
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
          height={row - (frame.dense ? 2 : 4)}
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

/** Low rows have room for one name, which then stands for all. */
const nameOf = (frame: DayFrame, who: string): string =>
  frame.dense ? words.day.hands(frame.data.hours?.hands.length ?? 0) : words.day.hand(who);

export const crewRows: DayRow = {
  key: 'crew',
  height: (frame) => (frame.small ? 0 : (frame.data.hours?.hands.length ?? 0) * tall(frame) + (frame.dense ? 4 : 0)),
  draw(frame, top) {
    return (
      <>
        {(frame.data.hours?.hands ?? []).map(({ who, blocks }, i) => {
          const y = top + 2 + i * tall(frame);
          return (
            <g key={who}>
              {frame.dense && i > 0 ? null : rowName(frame, nameOf(frame, who), y + (frame.dense ? 11 : 14))}
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
