import { formula } from '../../kernel/formula.ts';

/** Room between a reading and the limit above it, in their unit; below zero the limit is passed. */
export const roomBelowLimit = formula({
  id: 'system/room-below-limit',
  says: 'Room between a reading and the limit above it',
  equation: 'limit − reading',
  takes: { limit: '*', reading: '*' },
  gives: '*',
  holds: {},
  source: 'own-arithmetic',
  noOutsideRow: 'A difference of two numbers.',
  compute: ({ limit, reading }) => limit - reading,
});

/** Room between a humidity reading and the limit above it, in points of humidity (fraction); below zero it is passed. */
export const roomBelowHumidity = formula({
  id: 'system/room-below-humidity',
  says: 'Points of humidity between a reading and the limit above it',
  equation: 'limit − reading',
  takes: { limit: '1', reading: '1' },
  gives: '1',
  holds: { limit: [0, 1], reading: [0, 1] },
  refuses: { limit: [0, 1], reading: [0, 1] },
  source: 'own-arithmetic',
  noOutsideRow: 'A difference of two numbers.',
  shows: 'humidity',
  inputShows: { limit: 'humidity', reading: 'humidity' },
  compute: ({ limit, reading }) => limit - reading,
});
