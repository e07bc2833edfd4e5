import type { Change, Draft } from '../port.ts';

/** The writes a child makes, one a number: every second one is a transaction of several rows. */
export function changesOf(number: number): readonly Change[] {
  const putJob: Change = { do: 'put', draft: numberedJob(number, 'a'), expected: 0 };
  if (!isTransaction(number)) return [putJob];
  const jobId = `job-${number}-a`;
  return [
    putJob,
    { do: 'append', entry: { jobId, id: 'r1', at: at(number), body: { number, humidity: 0.7 } } },
    { do: 'put', draft: numberedJob(number, 'b'), expected: 0 },
    { do: 'append', entry: { jobId, id: 'r2', at: at(number), body: { number, humidity: 0.6 } } },
    { do: 'put', draft: { ...numberedJob(number, 'a'), title: `Job ${number} again` }, expected: 1 },
  ];
}

export function isTransaction(number: number): boolean {
  return number % 2 === 0;
}

function numberedJob(number: number, letter: string): Draft {
  const body = { number, letter, filling: `${number} `.repeat(400) };
  return {
    kind: 'job',
    id: `job-${number}-${letter}`,
    updatedAt: at(number),
    title: `Job ${number}`,
    searchText: '',
    body,
  };
}

function at(number: number): string {
  return new Date(Date.UTC(2026, 2, 2) + number * 1000).toISOString();
}

/** Numbers between 0 and 1 that a seed decides (a linear congruence; only the spread of moments matters). */
export function seededNumbers(seed: number): () => number {
  let state = (seed * 2_654_435_761 + 1) >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}
