import type { AnyFormula } from '../../kernel/formula.ts';
import {
  crewTime,
  patchRate,
  restOfArea,
  singleFromMean,
  sweptArea,
  systemDryFilm,
  timeFromArea,
  timeFromCount,
  timeFromLength,
} from './preparation.ts';
import {
  ageFromDays,
  allEdges,
  edgeToWork,
  lengthErrorFromArea,
  lineLength,
  netArea,
  riserLength,
  totalArea,
  totalLength,
} from './survey.ts';

import { cornersFromTape, tapedAreaError } from './taped-room.ts';

/** Small sums of the survey and the preparation that are no law of nature. */
export const stepFormulasSurvey: readonly AnyFormula[] = [
  netArea,
  allEdges,
  edgeToWork,
  lineLength,
  totalArea,
  totalLength,
  riserLength,
  ageFromDays,
  lengthErrorFromArea,
  cornersFromTape,
  tapedAreaError,
  timeFromArea,
  timeFromLength,
  timeFromCount,
  sweptArea,
  restOfArea,
  systemDryFilm,
  patchRate,
  crewTime,
  singleFromMean,
];
