import type { AnyFormula } from '../../kernel/formula.ts';
import * as learning from './learning.ts';
import { characteristicLower, meanLowerBound, toleranceLowerBound } from './lower-bounds.ts';
import { lognormalMean, lognormalQuantile, normalChance, normalQuantileAt } from './normal.ts';
import { grubbs, grubbsCritical } from './outlier.ts';
import {
  lineIntercept,
  lineInterceptError,
  lineResidualDeviation,
  lineSlope,
  lineSlopeError,
} from './straight-line.ts';
import { autocorrelation, deviationOfSum, deviationOfValues, meanOfValues, sumOfValues } from './summary.ts';
import * as three from './three-point.ts';
import { toleranceFactor, toleranceFactorNatrella } from './tolerance-factor.ts';

export * from './learning.ts';
export * from './lower-bounds.ts';
export * from './moments.ts';
export * from './noncentral-t.ts';
export * from './normal.ts';
export * from './outlier.ts';
export * from './straight-line.ts';
export * from './summary.ts';
export * from './three-point.ts';
export * from './tolerance-factor.ts';

export const statisticsFormulas: readonly AnyFormula[] = [
  meanOfValues,
  deviationOfValues,
  autocorrelation,
  sumOfValues,
  deviationOfSum,
  meanLowerBound,
  characteristicLower,
  toleranceLowerBound,
  toleranceFactor,
  toleranceFactorNatrella,
  grubbs,
  grubbsCritical,
  lineSlope,
  lineIntercept,
  lineSlopeError,
  lineInterceptError,
  lineResidualDeviation,
  three.pertMean,
  three.pertDeviation,
  three.triangularMean,
  three.triangularDeviation,
  three.triangularQuantile,
  three.betaDeviation,
  three.betaQuantileOfThree,
  normalQuantileAt,
  normalChance,
  lognormalQuantile,
  lognormalMean,
  learning.updatedMean,
  learning.updatedDeviation,
  learning.pooledMean,
  learning.pooledDeviation,
  learning.shrunkMeans,
  learning.eventRate,
];
