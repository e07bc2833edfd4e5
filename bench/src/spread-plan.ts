import { answered, plan } from '@slabwright/core';
import { type GoldenName, goldenJob } from './golden.ts';
import { medianOf, type Row } from './measure.ts';

/** Quick spread of a golden job: what it adds to the plan, for each coat. */
function perCoat(name: GoldenName, runs: number): number {
  const { weather: _, ...input } = goldenJob(name);
  const made = plan({ ...input, spread: 'quick' });
  const coats = made.options.reduce(
    (sum, { spread }) => sum + (spread && answered(spread) ? spread.coats.length : 0),
    0,
  );
  const bare = medianOf(() => plan(input), runs, 3);
  const whole = medianOf(() => plan({ ...input, spread: 'quick' }), runs, 2);
  return (whole - bare) / coats;
}

export function spreadPlanRows(): readonly Row[] {
  const garage = perCoat('garage', 9);
  const workshop = perCoat('workshop', 5);
  const bytes = JSON.stringify(plan({ ...goldenJob('garage'), spread: 'quick' })).length;
  return [
    {
      name: 'quick spread of the garage, each coat',
      figure: `${garage.toFixed(0)} ms`,
      budget: '≤ 60 ms',
      holds: garage <= 60,
    },
    {
      name: 'quick spread of 593 m², each coat',
      figure: `${workshop.toFixed(0)} ms`,
      budget: '≤ 350 ms',
      holds: workshop <= 350,
    },
    {
      name: 'the garage plan with its spread as JSON',
      figure: `${(bytes / 1024).toFixed(0)} kB`,
      budget: '≤ 1024 kB',
      holds: bytes <= 1024 * 1024,
    },
  ];
}
