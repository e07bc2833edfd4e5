import { formula } from '../../kernel/formula.ts';

/** Global radiation of a cloudless sky by the sun's elevation alone, W/m² (Haurwitz 1945). */
export const haurwitzAt = (elevation: number): number => {
  const sine = Math.sin(elevation);
  return sine > 0 ? 1098 * sine * Math.exp(-0.059 / sine) : 0;
};

export const haurwitz = formula({
  id: 'sun/clear-sky-haurwitz',
  says: 'Global radiation on the horizontal under a cloudless sky, by the elevation of the sun alone',
  equation: 'G = 1098 · sin(elevation) · exp(−0.059 / sin(elevation))',
  takes: { elevation: 'rad' },
  gives: 'W/m²',
  holds: { elevation: [0, Math.PI / 2] },
  refuses: { elevation: [-Math.PI / 2, Math.PI / 2] },
  source: 'pvlib-tests',
  locator: 'test_clearsky.py, Haurwitz',
  notes:
    'The simplest of the clear-sky laws: taken when no turbidity is known. 0 with the sun at or under the horizon.',
  compute: ({ elevation }) => haurwitzAt(elevation),
});

export interface ClearSky {
  /** Global on the horizontal, W/m². */
  readonly global: number;
  /** Direct on a surface that faces the sun, W/m². */
  readonly direct: number;
  /** From the rest of the sky on the horizontal, W/m². */
  readonly diffuse: number;
}

export interface IneichenInputs {
  /** Apparent zenith angle, rad. */
  readonly zenith: number;
  /** Absolute air mass, 1 at the zenith at sea level. */
  readonly airMass: number;
  /** Linke turbidity: 2 very clear, 3 clean, 5 hazy. */
  readonly turbidity: number;
  /** m above the sea */
  readonly altitude: number;
  /** W/m² outside the air; 1364 in the published check. */
  readonly extraterrestrial: number;
}

/**
 * Clear-sky radiation by turbidity and altitude (Ineichen & Perez 2002). Chosen over Haurwitz where turbidity is known.
 * All zero with the sun under the horizon.
 */
export const ineichen = ({ zenith, airMass, turbidity, altitude, extraterrestrial }: IneichenInputs): ClearSky => {
  const cosine = Math.cos(zenith);
  if (cosine <= 0) return { global: 0, direct: 0, diffuse: 0 };
  const low = Math.exp(-altitude / 8000);
  const high = Math.exp(-altitude / 1250);
  const gain = 5.09e-5 * altitude + 0.868;
  const decay = 3.92e-5 * altitude + 0.0387;
  const global = gain * extraterrestrial * cosine * Math.exp(-decay * airMass * (low + high * (turbidity - 1)));
  const byTurbidity = (0.664 + 0.163 / low) * Math.exp(-0.09 * airMass * (turbidity - 1)) * extraterrestrial;
  const byGlobal = (global * (1 - (0.1 - 0.2 * Math.exp(-turbidity)) / (0.1 + 0.882 / low))) / cosine;
  const direct = Math.max(0, Math.min(byTurbidity, byGlobal));
  return { global, direct, diffuse: global - direct * cosine };
};

export interface SolisInputs {
  /** Apparent elevation, rad. */
  readonly elevation: number;
  /** Aerosol optical depth at 700 nm, 0 to 0.45. */
  readonly aerosol: number;
  /** Precipitable water, cm, 0.2 to 10. */
  readonly water: number;
  /** Pa */
  readonly pressure: number;
  /** W/m² */
  readonly extraterrestrial: number;
}

/** Clear-sky radiation by aerosol and water (Ineichen 2008, simplified Solis): the rival that Ineichen is compared with. */
export const simplifiedSolis = ({ elevation, aerosol, water, pressure, extraterrestrial }: SolisInputs): ClearSky => {
  const sine = Math.sin(elevation);
  if (sine <= 0) return { global: 0, direct: 0, diffuse: 0 };
  const a = aerosol;
  const w = Math.max(water, 0.2);
  const l = Math.log(w);
  const p = Math.log(pressure / 101325);
  const enhanced =
    extraterrestrial * (0.12 * w ** 0.56 * a * a + 0.97 * w ** 0.032 * a + 1.08 * w ** 0.0051 + 0.071 * p);
  const tauDirect =
    (1.82 + 0.056 * l + 0.0071 * l * l) * a + 0.33 + 0.045 * l + 0.0096 * l * l + (0.0089 * w + 0.13) * p;
  const powerDirect = (0.00925 * a * a + 0.0148 * a - 0.0172) * l - 0.7565 * a * a + 0.5057 * a + 0.4557;
  const tauGlobal = (1.24 + 0.047 * l + 0.0061 * l * l) * a + 0.27 + 0.043 * l + 0.009 * l * l + (0.0079 * w + 0.1) * p;
  const powerGlobal = -0.0147 * l - 0.3079 * a * a + 0.2846 * a + 0.3798;
  const [d4, d3, d2, d1, d0, dp] =
    a < 0.05
      ? [
          86 * w - 13800,
          -3.11 * w + 79.4,
          -0.23 * w + 74.8,
          0.092 * w - 8.86,
          0.0042 * w + 3.12,
          -0.83 * (1 + a) ** -17.2,
        ]
      : [
          -0.21 * w + 11.6,
          0.27 * w - 20.7,
          -0.134 * w + 15.5,
          0.0554 * w - 5.71,
          0.0057 * w + 2.94,
          -0.71 * (1 + a) ** -15,
        ];
  const tauDiffuse = (((d4 * a + d3) * a + d2) * a + d1) * a + d0 + dp * p;
  const powerDiffuse = -0.337 * a * a + 0.63 * a + 0.116 + p / (18 + 152 * a);
  return {
    global: enhanced * Math.exp(-tauGlobal / sine ** powerGlobal) * sine,
    direct: enhanced * Math.exp(-tauDirect / sine ** powerDirect),
    diffuse: enhanced * Math.exp(-tauDiffuse / sine ** powerDiffuse),
  };
};

/**
 * Share of the clear-sky radiation that clouds let through: 1 − 0.75 · cover^3.4 (Kasten & Czeplak 1980, from memory).
 *
 * @param cover share of the sky that is cloud, 0-1
 */
export const throughClouds = (cover: number): number => 1 - 0.75 * cover ** 3.4;

/** Cloud cover that lets through the given share of the clear-sky radiation; the inverse, 0-1. */
export const coverFromShare = (share: number): number => Math.min(1, Math.max(0, (1 - share) / 0.75)) ** (1 / 3.4);
