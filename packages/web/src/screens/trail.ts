import { useRef } from 'react';

/** The numbers opened one out of the other. Opening one that is in the trail goes back to it. */
export function trailWith(trail: readonly string[], id: string | undefined): readonly string[] {
  if (id === undefined) return [];
  const at = trail.indexOf(id);
  return at >= 0 ? trail.slice(0, at + 1) : [...trail, id];
}

export function useTrail(id: string | undefined): readonly string[] {
  const trail = useRef<readonly string[]>([]);
  trail.current = trailWith(trail.current, id);
  return trail.current;
}
