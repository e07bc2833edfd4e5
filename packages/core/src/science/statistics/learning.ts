import { formula, type Values } from '../../kernel/formula.ts';
import { Refuse } from '../../kernel/refusal.ts';
import { needValues } from './moments.ts';

const takes = { priorMean: '*', priorDeviation: '*', dataMean: '*', dataDeviation: '*', count: '1' } as const;
const holds = { count: [0, 10_000] } as const;
const refuses = {
  priorDeviation: [Number.MIN_VALUE, Number.MAX_VALUE],
  dataDeviation: [Number.MIN_VALUE, Number.MAX_VALUE],
  count: [0, 1e9],
} as const;
const inputShows = { count: 'count' } as const;

/** Weight of the data, 0 to 1; by ratios, so that tiny deviations do not overflow. */
const weightOfData = ({ priorDeviation, dataDeviation, count }: Values<typeof takes>): number => {
  const ratio = dataDeviation / priorDeviation;
  return count / (count + ratio * ratio);
};

/**
 * Mean after seeing data: the prior and the mean of `count` readings, each weighted by its precision.
 *
 * For rates work on their logarithms, so that they stay positive. One job moves the mean little, ten jobs a lot.
 */
export const updatedMean = formula({
  id: 'statistics/updated-mean',
  says: 'Mean of a prior after seeing readings',
  equation:
    'mean = (priorMean/priorDeviation² + count dataMean/dataDeviation²) / (1/priorDeviation² + count/dataDeviation²)',
  takes,
  gives: '*',
  holds,
  refuses,
  source: 'normal-normal-update',
  inputShows,
  compute: (values) => values.priorMean + weightOfData(values) * (values.dataMean - values.priorMean),
});

export const updatedDeviation = formula({
  id: 'statistics/updated-deviation',
  says: 'Standard deviation of a prior after seeing readings',
  equation: 'deviation = 1 / sqrt(1/priorDeviation² + count/dataDeviation²)',
  takes,
  gives: '*',
  holds,
  refuses,
  source: 'normal-normal-update',
  inputShows,
  compute: (values) => values.priorDeviation * Math.sqrt(1 - weightOfData(values)),
});

const takesGroups = { means: '*[]', errors: '*[]', between: '*' } as const;
const together = [['means', 'errors']] as const;

interface Pooled {
  readonly mean: number;
  readonly deviation: number;
}

function pooled({ means, errors, between }: Values<typeof takesGroups>): Pooled {
  needValues(means, 1, 'means');
  if (between < 0) throw new Refuse('must-be-positive', 'between');
  const variances = errors.map((error) => error ** 2 + between ** 2);
  if (variances.some((variance) => !(variance > 0))) throw new Refuse('must-be-positive', 'errors');
  const weight = variances.reduce((sum, variance) => sum + 1 / variance, 0);
  const mean = means.reduce((sum, value, i) => sum + value / (variances[i] as number), 0) / weight;
  return { mean, deviation: 1 / Math.sqrt(weight) };
}

const groupsNote = 'The published solution of the eight-school data is from memory (MEM); the data were read.';

/** Common mean of groups whose own means are known with different errors. `between` 0 pools them outright. */
export const pooledMean = formula({
  id: 'statistics/pooled-mean',
  says: 'Common mean of groups known with different errors',
  equation: 'mean = sum(mean_j/(error_j² + between²)) / sum(1/(error_j² + between²))',
  takes: takesGroups,
  gives: '*',
  holds: {},
  together,
  source: 'hierarchical-normal',
  noOutsideRow: groupsNote,
  compute: (values) => pooled(values).mean,
});

export const pooledDeviation = formula({
  id: 'statistics/pooled-deviation',
  says: 'Standard deviation of the common mean of groups',
  equation: 'deviation = 1 / sqrt(sum(1/(error_j² + between²)))',
  takes: takesGroups,
  gives: '*',
  holds: {},
  together,
  source: 'hierarchical-normal',
  noOutsideRow: groupsNote,
  compute: (values) => pooled(values).deviation,
});

/**
 * Each group's mean drawn towards the common mean: little data, far; much data, hardly. This is how one garage does
 * not overwrite what the firm knows about a machine.
 */
export const shrunkMeans = formula({
  id: 'statistics/shrunk-means',
  says: 'Means of groups drawn towards their common mean',
  equation: 'mean_j = (mean_j/error_j² + common/between²) / (1/error_j² + 1/between²)',
  takes: takesGroups,
  gives: '*[]',
  holds: {},
  together,
  source: 'hierarchical-normal',
  noOutsideRow: groupsNote,
  compute: (values) => {
    const common = pooled(values).mean;
    return values.means.map((mean, j) => {
      const error = values.errors[j] as number;
      const own = values.between ** 2 / (values.between ** 2 + error ** 2);
      return common + own * (mean - common);
    });
  },
});

/** Mean rate of rare events (call-backs per m², cracks per m) from a prior and a count over an exposure. */
export const eventRate = formula({
  id: 'statistics/event-rate',
  says: 'Mean rate of rare events from a prior and a count',
  equation: 'rate = (priorCount + count) / (priorExposure + exposure)',
  takes: { priorCount: '1', priorExposure: '1', count: '1', exposure: '1' },
  gives: '1',
  holds: {},
  refuses: {
    priorCount: [0, 1e12],
    priorExposure: [1e-12, 1e12],
    count: [0, 1e12],
    exposure: [0, 1e12],
  },
  source: 'gamma-poisson',
  notes: 'Exposures are plain numbers of one unit; the rate is per that unit.',
  noOutsideRow: 'Textbook closed form from memory; the worked numbers are own arithmetic (CALC).',
  compute: ({ priorCount, priorExposure, count, exposure }) => (priorCount + count) / (priorExposure + exposure),
});
