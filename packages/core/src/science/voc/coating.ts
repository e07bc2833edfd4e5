import { formula } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';

const MASS = [0, 1e5] as const;
const VOLUME = [1e-9, 100] as const;
const PART = [0, 100] as const;

/** Organic volatiles that count, kg: what evaporates less its water and its exempt solvent. */
function countedMass(volatileMass: number, waterMass: number, exemptMass: number): number {
  const counted = volatileMass - waterMass - exemptMass;
  // A nanogram a kilogram below nothing is rounding; more than that is a slip of the person who typed.
  if (counted < -1e-9 * volatileMass) throw new Refuse('water-and-exempt-above-volatile', 'volatileMass');
  return Math.max(0, counted);
}

/**
 * VOC of a coating less water and exempt compounds, kg/m³ (g/L), as mixed and thinned for use.
 *
 * Masses in kg, volumes in m³. Refused where water and exempt solvent leave no coating, or weigh more than what
 * evaporates.
 */
export const coatingVoc = formula({
  id: 'voc/coating',
  says: 'Volatile organic compounds per volume of coating, less water and exempt compounds',
  equation: '(volatileMass − waterMass − exemptMass) / (coatingVolume − waterVolume − exemptVolume)',
  takes: {
    volatileMass: 'kg',
    waterMass: 'kg',
    exemptMass: 'kg',
    coatingVolume: 'm³',
    waterVolume: 'm³',
    exemptVolume: 'm³',
  },
  gives: 'kg/m³',
  holds: {
    volatileMass: [0, 1000],
    waterMass: [0, 1000],
    exemptMass: [0, 1000],
    coatingVolume: [1e-6, 10],
    waterVolume: [0, 10],
    exemptVolume: [0, 10],
  },
  refuses: {
    volatileMass: MASS,
    waterMass: MASS,
    exemptMass: MASS,
    coatingVolume: VOLUME,
    waterVolume: PART,
    exemptVolume: PART,
  },
  source: 'cfr-40-59-104',
  locator: '40 CFR 59.104(a)(1), variable list',
  notes:
    'The basis of most US limits. Exempt thinner leaves it unchanged, so it must never be the only bound on thinning. For a waterborne coating it can be twice the material figure: show both with their names. What counts as exempt depends on place and date. A laboratory figure can be higher than the computed one. Volumes are taken as additive.',
  shows: 'voc',
  inputShows: { coatingVolume: 'volume', waterVolume: 'volume', exemptVolume: 'volume' },
  compute: ({ volatileMass, waterMass, exemptMass, coatingVolume, waterVolume, exemptVolume }) => {
    const rest = coatingVolume - waterVolume - exemptVolume;
    if (rest <= 1e-9 * coatingVolume) throw new Refuse('water-and-exempt-fill-the-coating', 'coatingVolume');
    return countedMass(volatileMass, waterMass, exemptMass) / rest;
  },
});

/** VOC per volume of the material itself, water and exempt solvent included in the volume, kg/m³; masses kg, volume m³. */
export const materialVoc = formula({
  id: 'voc/material',
  says: 'Volatile organic compounds per volume of material as it stands in the pail',
  equation: '(volatileMass − waterMass − exemptMass) / coatingVolume',
  takes: { volatileMass: 'kg', waterMass: 'kg', exemptMass: 'kg', coatingVolume: 'm³' },
  gives: 'kg/m³',
  holds: { volatileMass: [0, 1000], waterMass: [0, 1000], exemptMass: [0, 1000], coatingVolume: [1e-6, 10] },
  refuses: { volatileMass: MASS, waterMass: MASS, exemptMass: MASS, coatingVolume: VOLUME },
  source: 'cfr-40-59-406',
  locator: '40 CFR 59.406, equation 2',
  notes:
    'The basis for low-solids coatings and for totals of emissions, and the shape of the European figure. Never compare it with a limit stated less water and exempt compounds.',
  shows: 'voc',
  inputShows: { coatingVolume: 'volume' },
  compute: ({ volatileMass, waterMass, exemptMass, coatingVolume }) =>
    countedMass(volatileMass, waterMass, exemptMass) / coatingVolume,
});

/** VOC per volume of solids, kg/m³, from the coating figure and the density of the solvent, both in kg/m³. */
export const vocPerSolids = formula({
  id: 'voc/per-solids',
  says: 'Volatile organic compounds per volume of solids',
  equation: 'coatingVoc / (1 − coatingVoc / solventDensity)',
  takes: { coatingVoc: 'kg/m³', solventDensity: 'kg/m³' },
  gives: 'kg/m³',
  holds: { coatingVoc: [0, 800], solventDensity: [600, 1400] },
  refuses: { coatingVoc: [0, 3000], solventDensity: [1, 3000] },
  defaults: { solventDensity: 881.92 },
  source: 'texas-30-115-423',
  locator: '30 TAC 115.423(1), figure',
  notes: 'The rule assumes solvent of 7.36 lb a US gallon (881.9 g/L). Compares coatings of different solids fairly.',
  shows: 'voc',
  inputShows: { coatingVoc: 'voc', solventDensity: 'density' },
  compute: ({ coatingVoc: voc, solventDensity }) => {
    if (voc >= solventDensity) throw new Refuse('voc-not-below-solvent-density', 'coatingVoc', [0, solventDensity]);
    return voc / (1 - voc / solventDensity);
  },
});
