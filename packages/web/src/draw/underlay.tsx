import type { FloorFrame } from '../floor/geometry.ts';

/** What lies under the drawing to trace over. */
export function Underlay(_: { readonly frame: FloorFrame }) {
  return null;
}
