import { BAND_WIDTH, LIMIT_AT, type Limited, type Place } from './limit-scale.ts';

const WIDTH = 100;
const HEIGHT = 72;
const MIDDLE = HEIGHT / 2;
const FURTHEST = WIDTH - 12;

/** One fact on the shared line. The words beside it say the same, so it is hidden from a reader of the page. */
export function LimitLine({ limited, place }: { readonly limited: Limited; readonly place: Place }) {
  const assumed = limited.value.origin === 'assumed';
  const colour = place.past
    ? limited.dashed
      ? 'var(--caution)'
      : 'var(--stop)'
    : place.touches
      ? 'var(--caution)'
      : 'var(--ink)';
  const loud = place.past || place.touches;
  const wanted = LIMIT_AT + (place.sure ? place.bands * BAND_WIDTH : place.past ? -14 : BAND_WIDTH * 1.5);
  const far = wanted > FURTHEST - BAND_WIDTH / 2 && place.sure;
  const dot = Math.max(7, far ? FURTHEST - 14 : Math.min(wanted, FURTHEST));
  return (
    <svg width={WIDTH} height={HEIGHT} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <rect width={LIMIT_AT} height={HEIGHT} fill="url(#wrong)" />
      <path
        d={`M${LIMIT_AT} 0V${HEIGHT}`}
        stroke="var(--ink)"
        strokeWidth={limited.dashed ? 2.6 : 2}
        {...(limited.dashed ? { strokeDasharray: '4 4' } : {})}
      />
      {place.sure ? (
        <path
          d={`M${dot - BAND_WIDTH / 2} ${MIDDLE}H${dot + BAND_WIDTH / 2}`}
          stroke={colour}
          strokeWidth={assumed ? 2 : loud ? 5 : 3}
          {...(assumed ? { strokeDasharray: '2 5' } : {})}
        />
      ) : null}
      {far ? (
        <path d={`M${FURTHEST + 4} ${MIDDLE - 5}l6 5-6 5`} fill="none" stroke="var(--ink)" strokeWidth="2" />
      ) : null}
      <circle
        cx={dot}
        cy={MIDDLE}
        r={loud ? 6.5 : 5}
        fill={assumed ? 'var(--sheet)' : colour}
        stroke={assumed ? colour : 'var(--sheet)'}
        strokeWidth={assumed ? 2 : 1.5}
      />
    </svg>
  );
}
