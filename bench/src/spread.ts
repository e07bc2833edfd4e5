import { readFileSync } from 'node:fs';
import { spread } from '@slabwright/core';

const { coarseProof, fullEffort, jointGridHall, planSpread, quickEffort, readInstance, search, spreadProblem } = spread;
type SpreadCase = spread.SpreadCase;

const NAMES = [
  'garage-6x6',
  'l-shape',
  'u-shape',
  'room-4-columns',
  'corridor-two-exits',
  'two-rooms',
  'trap-comb',
  'hall-25x24',
];

interface Timed {
  readonly score: number;
  readonly maxAgeMin: number;
  readonly milliseconds: number;
}

function timed(question: SpreadCase, effort: (squares: number) => spread.SpreadEffort): Timed {
  const from = performance.now();
  const problem = spreadProblem(question, 'whole');
  const [best] = search(problem, { effort: effort(problem.squares.count), seed: 1 });
  if (!best) throw new Error(`no candidate for ${question.name}`);
  return { score: best.score.score, maxAgeMin: best.score.maxAgeMin, milliseconds: performance.now() - from };
}

const percent = (ours: number, known: number): string => {
  const share = (ours / known - 1) * 100;
  return `${share > 0 ? '+' : ''}${share.toFixed(1)} %`;
};

/**
 * Prints, for every stored instance and the two large halls, the best known score and what quick and full effort reach,
 * with their times (warm, single run), the checker's largest age with true walks, and the coarse proof.
 * `folder`: where the instance files lie, as a URL ending in a slash.
 */
export function spreadBench(folder: URL, print: (line: string) => void): void {
  print(
    '| instance | squares | best known | quick | | ms | full | | ms | checker, largest age in min | within best on coarse copy |',
  );
  print('|---|---|---|---|---|---|---|---|---|---|---|');
  for (const name of NAMES) {
    const file = JSON.parse(readFileSync(new URL(`${name}.json`, folder), 'utf8'));
    const read = readInstance(file);
    if (!read.ok) throw new Error(`unreadable ${name}`);
    const known = file.bestKnown.score as number;
    for (let warm = 0; warm < 2; warm++) timed(read.value, quickEffort);
    const quick = timed(read.value, quickEffort);
    const full = timed(read.value, fullEffort);
    const plan = planSpread(read.value, { areas: 'whole', seed: 1, effort: fullEffort(quickSquares(read.value)) });
    const checked = plan.kind === 'plan' ? `passed, ${plan.check.maxAgeMin.toFixed(3)}` : plan.kind;
    const proof = coarseProof(spreadProblem(read.value, 'whole'), 400_000);
    const within = proof
      ? `${(proof.within * 100).toFixed(0)} %${proof.proved ? '' : ' (bound)'} at ${proof.squareM} m`
      : 'no copy';
    print(
      `| ${name} | ${quickSquares(read.value)} | ${known.toFixed(2)} | ${quick.score.toFixed(3)} | ${percent(quick.score, known)} | ${quick.milliseconds.toFixed(0)} ` +
        `| ${full.score.toFixed(3)} | ${percent(full.score, known)} | ${full.milliseconds.toFixed(0)} | ${checked} | ${within} |`,
    );
  }
  for (const [halls, laneM] of [
    [1, 0.5],
    [1, 1],
    [10, 1],
    [10, 0.5],
  ] as const) {
    const question = jointGridHall(halls, laneM);
    if (halls === 1) timed(question, quickEffort);
    const quick = timed(question, quickEffort);
    print(
      `| ${question.name}, lane ${laneM} m | ${quickSquares(question)} | none | ${quick.score.toFixed(2)} | max age ${quick.maxAgeMin.toFixed(3)} min | ${quick.milliseconds.toFixed(0)} | | | | | |`,
    );
  }
}

const quickSquares = (question: SpreadCase): number => spreadProblem(question, 'whole').squares.count;
