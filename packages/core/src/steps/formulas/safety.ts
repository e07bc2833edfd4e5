import type { AnyFormula } from '../../kernel/formula.ts';
import { formula } from '../../kernel/formula.ts';

const BY_HAND = 'A product of two measures; worked by hand beside its test.';

/** Liquid solvent that leaves a coating, m³, from its VOC: coating in m³, VOC and density of the solvent in kg/m³. */
export const solventFromVoc = formula({
  id: 'safety/solvent-from-voc',
  says: 'Liquid solvent that leaves a coating, from its VOC',
  equation: 'coating × coatingVoc / liquidDensity',
  takes: { coating: 'm³', coatingVoc: 'kg/m³', liquidDensity: 'kg/m³' },
  gives: 'm³',
  holds: { coating: [0, 20], coatingVoc: [0, 1000], liquidDensity: [600, 1700] },
  refuses: { coating: [0, 1e4], coatingVoc: [0, 2000], liquidDensity: [1, 5000] },
  source: 'own-arithmetic',
  notes: 'All VOC is taken as the one solvent the sheet names. A VOC stated less water and exempt solvent reads high.',
  noOutsideRow: BY_HAND,
  shows: 'volume',
  inputShows: { coating: 'volume', coatingVoc: 'voc', liquidDensity: 'density' },
  compute: ({ coating, coatingVoc, liquidDensity }) => (coating * coatingVoc) / liquidDensity,
});

/** Everything of a coating that does not stay, m³: coating in m³, solids as a share of its volume. */
export const volumeNotSolid = formula({
  id: 'safety/volume-not-solid',
  says: 'Part of a coating that does not stay, all of it taken as solvent',
  equation: 'coating × (1 − volumeSolids)',
  takes: { coating: 'm³', volumeSolids: '1' },
  gives: 'm³',
  holds: { coating: [0, 20], volumeSolids: [0.05, 1] },
  refuses: { coating: [0, 1e4], volumeSolids: [0, 1] },
  source: 'conservation-of-solids',
  notes: 'Reads high where part of it is water or gas of the cure.',
  noOutsideRow: BY_HAND,
  shows: 'volume',
  inputShows: { coating: 'volume', volumeSolids: 'share' },
  compute: ({ coating, volumeSolids }) => coating * (1 - volumeSolids),
});

/** Air of a room, m³: floor in m², height in m. Furniture, beams and open doors are not counted. */
export const roomVolume = formula({
  id: 'safety/room-volume',
  says: 'Volume of a room over its floor',
  equation: 'area × height',
  takes: { area: 'm²', height: 'm' },
  gives: 'm³',
  holds: { area: [0, 1e5], height: [1.5, 30] },
  refuses: { area: [0, 1e8], height: [0, 1000] },
  source: 'own-arithmetic',
  noOutsideRow: BY_HAND,
  shows: 'gas-volume',
  inputShows: { area: 'area', height: 'length' },
  compute: ({ area, height }) => area * height,
});

export const safetyFormulas: readonly AnyFormula[] = [solventFromVoc, volumeNotSolid, roomVolume];
