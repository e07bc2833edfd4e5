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
