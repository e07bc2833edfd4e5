import type { AnyFormula } from '../../kernel/formula.ts';
import { areaAtBreak, depthAtBreak, rateAtBreak, surplusAtBreak } from './quantities-breaks.ts';
import { broadcastMass, totalMass } from './quantities-broadcast.ts';
import {
  additionShare,
  componentLeft,
  componentMass,
  componentShare,
  componentVolume,
  packMakes,
  packsMake,
  shareBesideAddition,
  usablePart,
} from './quantities-components.ts';
import { componentLasts, jointPacksMake, mixReaches } from './quantities-joint.ts';
import { bagsHold, countBeside, wholeBags, wholeKits } from './quantities-packs.ts';
import {
  filmBeforeThinning,
  filmVolume,
  massLeft,
  neededVolume,
  thinnerVolume,
  totalArea,
  totalVolume,
  volumeLeft,
  withReserve,
} from './quantities-volumes.ts';

/** Small sums of the quantities step. */
export const quantitiesFormulas: readonly AnyFormula[] = [
  filmVolume,
  totalVolume,
  totalArea,
  neededVolume,
  withReserve,
  filmBeforeThinning,
  thinnerVolume,
  volumeLeft,
  massLeft,
  componentShare,
  shareBesideAddition,
  additionShare,
  componentVolume,
  componentMass,
  packMakes,
  packsMake,
  componentLeft,
  usablePart,
  wholeKits,
  wholeBags,
  bagsHold,
  countBeside,
  depthAtBreak,
  surplusAtBreak,
  areaAtBreak,
  rateAtBreak,
  componentLasts,
  jointPacksMake,
  mixReaches,
  broadcastMass,
  totalMass,
];
