import { FillRule, intersectD } from 'clipper2-ts';
import { boxOf, type Point, type Ring, signedArea } from './polygon.ts';

/** Decimals of a metre kept when clipping. */
const DECIMALS = 4;

const pathOf = (ring: Ring): { x: number; y: number }[] => ring.map(([x, y]) => ({ x, y }));

/** Floor that two outlines share, m². */
export function areaShared(one: Ring, other: Ring): number {
  const [a, b] = [boxOf(one), boxOf(other)];
  if (a.right <= b.left || b.right <= a.left || a.top <= b.bottom || b.top <= a.bottom) return 0;
  const shared = intersectD([pathOf(one)], [pathOf(other)], FillRule.NonZero, DECIMALS);
  const sum = shared.reduce((total, path) => total + signedArea(path.map(({ x, y }): Point => [x, y])), 0);
  return Math.max(0, sum);
}
