import type { Issue } from '../../kernel/issue.ts';
import { GROUND_DEPTH } from './materials.ts';

/** What a person says about the slab; each is checked before a grid is built. */
export interface SlabDescription {
  /** m */
  readonly slabThickness: number;
  /** m */
  readonly baseThickness: number;
  /** W/(m K) */
  readonly conductivity: number;
  /** kg/m³ */
  readonly density: number;
  /** J/(kg K) */
  readonly heatCapacity: number;
}

/** Thinner is a topping on something else, whose layers must be said; thicker is a raft or a dam. */
export const SLAB_LIMITS: Readonly<Record<keyof SlabDescription, readonly [number, number, string]>> = {
  slabThickness: [0.025, 1.5, 'm'],
  baseThickness: [0, 2, 'm'],
  conductivity: [0.2, 4, 'W/(m K)'],
  density: [300, 4000, 'kg/m³'],
  heatCapacity: [500, 2500, 'J/(kg K)'],
};

/** Issues of a slab's description; none means that the ground model can be built on it. */
export const slabIssues = (slab: SlabDescription, path: readonly (string | number)[] = ['slab']): readonly Issue[] => {
  const issues: Issue[] = [];
  for (const field of Object.keys(SLAB_LIMITS) as (keyof SlabDescription)[]) {
    const [least, most, unit] = SLAB_LIMITS[field];
    const value = slab[field];
    if (!(value >= least && value <= most)) {
      issues.push({
        code: 'slab-value-outside',
        path: [...path, field],
        value: `${value} ${unit}`,
        limits: [`${least} ${unit}`, `${most} ${unit}`],
        names: { field },
      });
    }
  }
  if (issues.length === 0 && slab.slabThickness + slab.baseThickness >= GROUND_DEPTH) {
    issues.push({
      code: 'slab-value-outside',
      path: [...path, 'baseThickness'],
      value: `${slab.baseThickness} m`,
      limits: ['0 m', `${(GROUND_DEPTH - slab.slabThickness).toFixed(2)} m`],
    });
  }
  return issues;
};
