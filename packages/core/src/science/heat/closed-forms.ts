import { diffusivity, effusivity, type Material } from './materials.ts';

/**
 * Contact temperature of two bodies touched together, °C, before either has changed inside.
 *
 *   T = (e₁ T₁ + e₂ T₂) / (e₁ + e₂)        e = √(conductivity · density · heatCapacity)
 */
export const contactTemperature = (
  first: Material,
  firstTemperature: number,
  second: Material,
  secondTemperature: number,
): number => {
  const a = effusivity(first);
  const b = effusivity(second);
  return (a * firstTemperature + b * secondTemperature) / (a + b);
};

/** Depth at which a periodic swing has fallen to 1/e, m: √(2α/ω). */
export const penetrationDepth = (material: Material, period: number): number =>
  Math.sqrt((diffusivity(material) * period) / Math.PI);

/** Swing left at a depth (share of the surface's) and its delay behind the surface, s. */
export const waveAtDepth = (
  material: Material,
  period: number,
  depth: number,
): { readonly share: number; readonly lag: number } => {
  const x = depth / penetrationDepth(material, period);
  return { share: Math.exp(-x), lag: (x * period) / (2 * Math.PI) };
};

/**
 * Swing of a half-space's surface under a film (share of the air's) and its delay behind the air, s.
 *
 *   share = 1/√(1 + 2λ + 2λ²),  lag = atan(λ/(1 + λ)) / ω,  λ = (k/h) √(ω/2α)
 */
export const waveThroughFilm = (
  material: Material,
  film: number,
  period: number,
): { readonly share: number; readonly lag: number } => {
  const ratio = material.conductivity / film / penetrationDepth(material, period);
  return {
    share: 1 / Math.sqrt(1 + 2 * ratio + 2 * ratio * ratio),
    lag: (Math.atan(ratio / (1 + ratio)) * period) / (2 * Math.PI),
  };
};
