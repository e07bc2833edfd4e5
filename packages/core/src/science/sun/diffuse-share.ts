/** W/m² outside the air, mean over the year (the yearly swing of ±3.3 % is below the error of the share itself). */
export const SOLAR_CONSTANT = 1361;

/**
 * Share of the global radiation that is diffuse, by clearness (Erbs, Klein & Duffie 1982; coefficients from memory).
 *
 * @param global W/m² on the horizontal
 * @param elevation of the sun, rad
 */
export const diffuseShare = (global: number, elevation: number): number => {
  const outside = SOLAR_CONSTANT * Math.sin(elevation);
  if (outside <= 0) return 1;
  const k = Math.min(1, Math.max(0, global / outside));
  if (k <= 0.22) return 1 - 0.09 * k;
  if (k > 0.8) return 0.165;
  return 0.9511 + k * (-0.1604 + k * (4.388 + k * (-16.638 + k * 12.336)));
};

/** Direct radiation on the horizontal, W/m²: the global less its diffuse share. */
export const directOnFloor = (global: number, elevation: number): number =>
  elevation <= 0 ? 0 : global * (1 - diffuseShare(global, elevation));
