/**
 * Thermal properties of what lies under a floor.
 *
 * Published spreads are wide (aggregate and moisture move the conductivity of concrete from 1.4 to 2.0 W/(m K)); that
 * is why the conductivity is one of the quantities fitted to readings, with its prior spread, and never trusted alone.
 */

export interface Material {
  /** W/(m K) */
  readonly conductivity: number;
  /** kg/m³ */
  readonly density: number;
  /** J/(kg K) */
  readonly heatCapacity: number;
}

export interface Layer extends Material {
  /** m */
  readonly thickness: number;
}

/** Stone-mix concrete: Incropera & DeWitt, table A.3 (from memory). */
export const STONE_MIX_CONCRETE: Material = { conductivity: 1.4, density: 2300, heatCapacity: 880 };

/** Mean of the literature for concrete: NISTIR 6551 (Bentz 2000), table 1. */
export const PAVEMENT_CONCRETE: Material = { conductivity: 1.5, density: 2350, heatCapacity: 1000 };

/** Compacted granular base (common practice; inside the range of published pavement profiles). */
export const GRANULAR_BASE: Material = { conductivity: 1.5, density: 1900, heatCapacity: 850 };

/** Subsoil of medium moisture (common practice; published values run from 0.3 to 1.0 W/(m K) and above). */
export const SUBSOIL: Material = { conductivity: 1.0, density: 1700, heatCapacity: 1300 };

/** Thermal diffusivity, m²/s: conductivity / (density · heatCapacity). */
export const diffusivity = (material: Material): number =>
  material.conductivity / (material.density * material.heatCapacity);

/** Thermal effusivity, W s½/(m² K): how strongly a body holds its own temperature at a contact. */
export const effusivity = (material: Material): number =>
  Math.sqrt(material.conductivity * material.density * material.heatCapacity);

/** Depth to the bottom of the modelled ground, m. Yearly swing there is small and known from the annual wave. */
export const GROUND_DEPTH = 5;

/**
 * A slab of the given thickness on its base and the subsoil below, filled down to `GROUND_DEPTH`.
 *
 * @param slabThickness m
 * @param baseThickness m, 0 for a slab straight on soil
 */
export const slabOnGround = (
  slabThickness: number,
  baseThickness: number,
  concrete: Material = STONE_MIX_CONCRETE,
  soil: Material = SUBSOIL,
): readonly Layer[] => {
  const layers: Layer[] = [{ ...concrete, thickness: slabThickness }];
  if (baseThickness > 0) layers.push({ ...GRANULAR_BASE, thickness: baseThickness });
  layers.push({ ...soil, thickness: GROUND_DEPTH - slabThickness - baseThickness });
  return layers;
};
