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
  const wanted = LIMIT_AT + place.bands * BAND_WIDTH;
  const far = wanted > FURTHEST - BAND_WIDTH / 2;
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
        <Sure dot={dot} far={far} colour={colour} loud={loud} assumed={assumed} />
      ) : (
        <Side past={place.past} at={place.at} colour={colour} />
      )}
    </svg>
  );
}

interface SureProps {
  readonly dot: number;
  readonly far: boolean;
  readonly colour: string;
  readonly loud: boolean;
  readonly assumed: boolean;
}

/** A dot with its band; an arrow where it is further off than fits. */
function Sure({ dot, far, colour, loud, assumed }: SureProps) {
  return (
    <>
      <path
        d={`M${dot - BAND_WIDTH / 2} ${MIDDLE}H${dot + BAND_WIDTH / 2}`}
        stroke={colour}
        strokeWidth={assumed ? 2 : loud ? 5 : 3}
        {...(assumed ? { strokeDasharray: '2 5' } : {})}
      />
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
    </>
  );
}

/** Without a band only the side is known: an arrow away from the limit, or a bar on it. */
function Side({ past, at, colour }: { readonly past: boolean; readonly at: boolean; readonly colour: string }) {
  const path = at
    ? `M${LIMIT_AT} ${MIDDLE - 9}v18`
    : past
      ? `M${LIMIT_AT - 3} ${MIDDLE}H6m5-5-5 5 5 5`
      : `M${LIMIT_AT + 4} ${MIDDLE}h22m-5-5 5 5-5 5`;
  return <path d={path} fill="none" stroke={colour} strokeWidth={at ? 6 : past ? 3 : 2} />;
}
