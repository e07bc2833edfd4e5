import { type Entry, Ledger, plan, siteStateOf, Trace, wetFilmFromDry } from '@slabwright/core';
import { goldenJob } from './golden.ts';
import { pairedRatio, type Row, timesOf } from './measure.ts';

const DROPS = { put: (_: Entry): void => {} };

/** A plan with its hours takes at most this many times as long as one without: a limit of our own. */
const MOST_WITH_HOURS = 2;

/** Figures of one ledger, about as many as a garage plan holds. */
const FIGURES = 1_000;

/** What tracing adds to a Figure: beside a recorder that does nothing, and beside the bare computation. */
function costOfAFigure(): { readonly recording: number; readonly tracing: number } {
  const names = Array.from({ length: FIGURES }, (_, i) => `f${i}`);
  const run = (recorder: { put(entry: Entry): void }): void => {
    const trace = new Trace(recorder);
    const dryFilm = trace.given('d', { value: 2e-4, unit: 'm', origin: 'chosen' });
    const volumeSolids = trace.given('v', { value: 0.8, unit: '1', origin: 'chosen' });
    for (const name of names) trace.figure(name, wetFilmFromDry, { dryFilm, volumeSolids });
  };
  const plain = (): number => {
    let sum = 0;
    for (let i = 0; i < FIGURES; i++)
      sum += wetFilmFromDry.compute({ dryFilm: 2e-4, volumeSolids: 0.8 + (i & 1) * 1e-9 });
    return sum;
  };
  const beside = pairedRatio(
    () => run(new Ledger()),
    () => run(DROPS),
    400,
    100,
  );
  const whole = pairedRatio(() => run(new Ledger()), plain, 400, 100);
  const each = ({ a, b }: { readonly a: number; readonly b: number }): number => ((a - b) * 1000) / FIGURES;
  return { recording: each(beside), tracing: each(whole) };
}

export function planRows(): readonly Row[] {
  const { weather, ...bare } = goldenJob('garage');
  const calibrated = weather && siteStateOf(bare.job, weather, bare.now);
  const garage = { ...bare, ...(weather ? { weather } : {}), ...(calibrated ? { calibrated } : {}) };
  const time = timesOf(() => plan(garage), 100, 20);
  // A copy of the conditions is one that nothing is remembered of: every start of every coat is judged anew.
  const { hours } = calibrated ?? {};
  const anew = timesOf(
    () => {
      const fresh = hours && calibrated && { ...calibrated, hours: { ...hours, conditions: { ...hours.conditions } } };
      return plan({ ...garage, ...(fresh ? { calibrated: fresh } : {}) });
    },
    100,
    20,
  );
  const traced = pairedRatio(
    () => plan(garage),
    () => plan(garage, DROPS),
    80,
    10,
  );
  const heat = pairedRatio(
    () => plan(garage),
    () => plan(bare),
    40,
    10,
  );
  const figure = costOfAFigure();
  const bytes = JSON.stringify(plan(garage)).length;
  return [
    {
      name: 'plan of the garage with its hours, without spread, calibrated slab reused (least of 100; median)',
      figure: `${time.least.toFixed(1)} ms; ${time.median.toFixed(1)}`,
      budget: '≤ 30 ms',
      holds: time.least <= 30,
    },
    {
      name: 'the same, every start of every coat judged anew',
      figure: `${anew.least.toFixed(1)} ms; ${anew.median.toFixed(1)}`,
      budget: '≤ 30 ms',
      holds: anew.least <= 30,
    },
    {
      name: 'recording beside a recorder that does nothing',
      figure: `× ${traced.ratio.toFixed(3)}`,
      budget: '≤ 1.2',
      holds: traced.ratio <= 1.2,
    },
    {
      name: 'plan with the hours beside one without weather, calibrated slab reused',
      figure: `× ${heat.ratio.toFixed(2)}`,
      budget: `≤ × ${MOST_WITH_HOURS}`,
      holds: heat.ratio <= MOST_WITH_HOURS,
    },
    {
      name: 'a Figure recorded, beside a recorder that does nothing',
      figure: `${figure.recording.toFixed(3)} µs`,
      budget: '≤ 0.5 µs',
      holds: figure.recording <= 0.5,
    },
    {
      name: 'a Figure traced and recorded, beside the bare computation',
      figure: `${figure.tracing.toFixed(3)} µs`,
      budget: '',
      holds: undefined,
    },
    {
      name: 'the garage plan as JSON',
      figure: `${(bytes / 1024).toFixed(0)} kB`,
      budget: '≤ 1024 kB',
      holds: bytes <= 1024 * 1024,
    },
  ];
}
