import { formula } from '../../kernel/formula.ts';

const NO_ROW = 'Solved from quantities/needed; the test puts the value back and sees the count turn.';
const VOLUME = [0, 100] as const;

/**
 * Depth of profile or texture, m, at which the volume to buy reaches a capacity. The volume grows straight with the
 * depth: `area` in m² times what each litre of net becomes (`toBuy` ÷ `net` of the coat, m³); `total` and `capacity`
 * in m³ are of the whole product.
 */
export const depthAtBreak = formula({
  id: 'quantities/depth-at-break',
  says: 'Depth at which another pack is needed',
  equation: 'depth + (capacity − total) × net ÷ (toBuy × area)',
  takes: { depth: 'm', area: 'm²', net: 'm³', toBuy: 'm³', total: 'm³', capacity: 'm³' },
  gives: 'm',
  holds: { depth: [0, 0.01], area: [0, 1e5], net: VOLUME, toBuy: VOLUME, total: VOLUME, capacity: VOLUME },
  refuses: { area: [1e-6, 1e8], toBuy: [1e-9, 1e6] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'film',
  compute: ({ depth, area, net, toBuy, total, capacity }) => depth + ((capacity - total) * net) / (toBuy * area),
});

/** Surplus, 1, at which the volume to buy reaches a capacity; `toBuy` of the coat, `total` and `capacity` in m³. */
export const surplusAtBreak = formula({
  id: 'quantities/surplus-at-break',
  says: 'Surplus at which another pack is needed',
  equation: '(1 + surplus) × (toBuy + capacity − total) ÷ toBuy − 1',
  takes: { surplus: '1', toBuy: 'm³', total: 'm³', capacity: 'm³' },
  gives: '1',
  holds: { surplus: [0, 1], toBuy: VOLUME, total: VOLUME, capacity: VOLUME },
  refuses: { toBuy: [1e-9, 1e6] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'share',
  compute: ({ surplus, toBuy, total, capacity }) => ((1 + surplus) * (toBuy + capacity - total)) / toBuy - 1,
});

/** Floor area, m², at which the volume to buy reaches a capacity, all areas growing alike; volumes in m³. */
export const areaAtBreak = formula({
  id: 'quantities/area-at-break',
  says: 'Floor area at which another pack is needed',
  equation: 'area × capacity ÷ total',
  takes: { area: 'm²', total: 'm³', capacity: 'm³' },
  gives: 'm²',
  holds: { area: [0, 1e5], total: VOLUME, capacity: VOLUME },
  refuses: { total: [1e-9, 1e6] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'area',
  compute: ({ area, total, capacity }) => (area * capacity) / total,
});

/** Rate of a broadcast, kg/m², at which what is thrown reaches the mass held; masses in kg. */
export const rateAtBreak = formula({
  id: 'quantities/rate-at-break',
  says: 'Rate of a broadcast at which another bag is needed',
  equation: 'rate × held ÷ needed',
  takes: { rate: 'kg/m²', held: 'kg', needed: 'kg' },
  gives: 'kg/m²',
  holds: { rate: [0, 20], held: [0, 1e5], needed: [0, 1e5] },
  refuses: { rate: [0, 1000], held: [0, 1e8], needed: [1e-9, 1e8] },
  source: 'own-arithmetic',
  noOutsideRow: NO_ROW,
  shows: 'area-mass',
  inputShows: { rate: 'area-mass', held: 'mass', needed: 'mass' },
  compute: ({ rate, held, needed }) => (rate * held) / needed,
});
