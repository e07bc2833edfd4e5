import type { Ends } from './scale.ts';

/** Length of a value on the scale of its row; what may not be compared is hatched. */
export function Bar({ bar, hatched = false }: { readonly bar?: Ends | null | undefined; readonly hatched?: boolean }) {
  if (hatched) {
    return (
      <svg className="bar" width="100%" height="12" aria-hidden="true">
        <rect x="0.5" y="0.5" width="99%" height="11" fill="url(#wrong)" stroke="var(--stroke)" />
      </svg>
    );
  }
  if (!bar) return null;
  const [low, high] = bar;
  const share = (value: number): string => `${Math.max(value * 100, 0.5).toFixed(1)}%`;
  return (
    <svg className="bar" width="100%" height="12" aria-hidden="true">
      <rect x="0" y="0.5" width={share(high)} height="11" fill="var(--sheet)" stroke="var(--ink)" />
      <rect x="0" y="0" width={share(low)} height="12" fill="var(--ink)" />
    </svg>
  );
}
