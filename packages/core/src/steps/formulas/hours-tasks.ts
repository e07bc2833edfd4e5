import { formula } from '../../kernel/formula.ts';

/** A whole number of batches is not one more because of the last binary digit. */
const GUARD = 1e-9;

/** Batches that a volume is mixed in, none larger than the largest. Volumes in m³. */
export const batchCount = formula({
  id: 'hours/batches',
  says: 'Batches that a volume is mixed in',
  equation: 'batches = ⌈volume / largestBatch⌉',
  takes: { volume: 'm³', largestBatch: 'm³' },
  gives: '1',
  holds: { volume: [0, 20], largestBatch: [1e-4, 0.1] },
  refuses: { volume: [0, 1e4], largestBatch: [1e-9, 1e4] },
  source: 'rate-of-work',
  noOutsideRow: 'Counting; both sides of a whole batch are tested (own arithmetic).',
  shows: 'count',
  inputShows: { volume: 'volume', largestBatch: 'volume' },
  compute: ({ volume, largestBatch }) => Math.max(0, Math.ceil(volume / largestBatch - GUARD)),
});

/** Rate of work on a floor that is harder to go over than a smooth one; `times` is how many times longer it takes. */
export const slowedRate = formula({
  id: 'hours/slowed-rate',
  says: 'Rate of work where the same floor takes several times as long',
  equation: 'slowed = rate / times',
  takes: { rate: '*', times: '1' },
  gives: '*',
  holds: { times: [1, 2] },
  refuses: { rate: [1e-9, 1e6], times: [0.1, 100] },
  source: 'rate-of-work',
  noOutsideRow: 'A quotient; worked by hand (own arithmetic).',
  compute: ({ rate, times }) => rate / times,
});

/** Person-time of all tasks, s. Causes shared by several tasks (the pace of one crew) add up with their sign. */
export const personTime = formula({
  id: 'hours/person-time',
  says: 'Person-time of all tasks together',
  equation: 'time = sum(times)',
  takes: { times: 's[]' },
  gives: 's',
  holds: { times: [0, 7.2e6] },
  refuses: { times: [0, 1e9] },
  source: 'rate-of-work',
  noOutsideRow: 'A sum; worked by hand (own arithmetic).',
  shows: 'work-time',
  inputShows: { times: 'duration' },
  compute: ({ times }) => times.reduce((sum, time) => sum + time, 0),
});

/** Time paid for, s: the work and what comes beside it (travel, waiting, looking at the floor), as a share of the work. */
export const paidTime = formula({
  id: 'hours/paid-time',
  says: 'Time paid for: the work, with travel and waiting as a share of it',
  equation: 'paid = worked × (1 + beside)',
  takes: { worked: 's', beside: '1' },
  gives: 's',
  holds: { worked: [0, 7.2e7], beside: [0, 1] },
  refuses: { worked: [0, 1e9], beside: [0, 10] },
  source: 'rate-of-work',
  noOutsideRow: 'A product; worked by hand (own arithmetic).',
  shows: 'work-time',
  inputShows: { worked: 'work-time', beside: 'share' },
  compute: ({ worked, beside }) => worked * (1 + beside),
});

/** How fast a slab warms between two readings, K/s; negative when it cools. */
export const slabRate = formula({
  id: 'hours/slab-rate',
  says: 'How fast the slab warms between two readings',
  equation: 'rate = (later − earlier) / between',
  takes: { earlier: '°C', later: '°C', between: 's' },
  gives: 'K/s',
  holds: { earlier: [-40, 80], later: [-40, 80], between: [600, 28_800] },
  refuses: { earlier: [-100, 200], later: [-100, 200], between: [1, 1e7] },
  source: 'rate-of-work',
  notes: 'A straight line between two readings; a peak between them is not seen.',
  noOutsideRow: 'A quotient; worked by hand (own arithmetic).',
  compute: ({ earlier, later, between }) => (later - earlier) / between,
});
