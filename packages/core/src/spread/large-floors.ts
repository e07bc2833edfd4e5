import type { Exit, SpreadCase, StopLine } from './types.ts';

/**
 * An invented hall of 50 × 40 m with a joint grid of 10 m and four doors, `halls` of them side by side: for benches and
 * tests of large floors. Test values, not trade data. `laneM` sets the squares.
 */
export function jointGridHall(halls: number, laneM: number): SpreadCase {
  const wide = 50 * halls;
  const exits: Exit[] = [];
  for (let k = 0; k < halls; k++) {
    for (const y of [0, 40]) {
      for (const x of [8, 38]) exits.push({ a: [50 * k + x, y], b: [50 * k + x + 4, y], outside: true });
    }
  }
  const stopLines: StopLine[] = [];
  for (let x = 10; x < wide; x += 10) stopLines.push({ a: [x, 0], b: [x, 40], kind: 'joint' });
  for (let y = 10; y < 40; y += 10) stopLines.push({ a: [0, y], b: [wide, y], kind: 'joint' });
  return {
    name: halls === 1 ? 'hall-50x40' : `hall-50x40-times-${halls}`,
    outline: [
      [0, 0],
      [wide, 0],
      [wide, 40],
      [0, 40],
    ],
    holes: [],
    walls: [],
    exits,
    stopLines,
    mixAt: { exit: 0 },
    crew: { people: 5, dedicatedMixer: true, rateM2PerMinPerPerson: 1.5, laneM, walkMPerMin: 50 },
    batch: { litres: 20, litresPerM2: 0.3, mixMin: 5, handoverMin: 1 },
    clock: {
      startMin: 480,
      workingMin: [
        [480, 30],
        [720, 20],
        [900, 17],
      ],
      openMin: [
        [480, 20],
        [720, 14],
        [900, 12],
      ],
    },
    cellM: laneM,
  };
}
