import type { ClimateReading } from '../../job.ts';
import type { Missing } from '../../kernel/missing.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { dewMargin, dewPoint } from '../../science/air/index.ts';
import { givenField } from '../context.ts';
import type { SurveyPlan } from '../results.ts';

export interface ClimateFound {
  readonly margins: SurveyPlan['margins'];
  readonly notes: readonly Said[];
  readonly reasons: readonly Reason[];
  readonly missing: readonly Missing[];
}

/** Errors of the hand instruments, recorded once and shared by all readings: the same thermometer read them all. */
function instruments(trace: Trace) {
  const { airTemperatureError, relativeHumidityError, surfaceTemperatureError } = dewMargin.defaults as Readonly<
    Record<string, number>
  >;
  const assumed = { origin: 'assumed', where: dewMargin.id, says: 'survey-assumed-instruments' } as const;
  const value = (of: number | undefined): number => {
    if (of === undefined) throw new Error(`${dewMargin.id} states no error of an instrument`);
    return of;
  };
  return {
    airTemperatureError: trace.given('air-thermometer', {
      ...assumed,
      value: value(airTemperatureError),
      unit: 'K',
      shows: 'difference',
    }),
    relativeHumidityError: trace.given('hygrometer', {
      ...assumed,
      value: value(relativeHumidityError),
      unit: '1',
      shows: 'humidity',
    }),
    surfaceTemperatureError: trace.given('slab-thermometer', {
      ...assumed,
      value: value(surfaceTemperatureError),
      unit: 'K',
      shows: 'difference',
    }),
  };
}

const MISSING: Missing = {
  path: 'survey.climate',
  fact: { code: 'survey-missing-climate' },
  changes: { code: 'survey-missing-climate-changes' },
  meanwhile: 'held',
};

const NOT_READ: Reason = {
  verdict: 'not known',
  code: 'survey-climate-not-read',
  source: 'dew-point-chart-us-units',
  lift: { code: 'survey-climate-not-read-lift' },
};

/** Dew margin at each reading that has a slab temperature; air alone says nothing about the slab. */
export function climateMargins(trace: Trace, readings: readonly ClimateReading[]): ClimateFound {
  const notes: Said[] = [];
  const margins: SurveyPlan['margins'][number][] = [];
  const withSlab = readings.filter(({ slab }) => slab !== undefined);
  if (withSlab.length === 0) return { margins, notes, reasons: [NOT_READ], missing: [MISSING] };
  const errors = instruments(trace.within('instruments'));
  readings.forEach((reading, i) => {
    if (!reading.slab) return;
    const t = trace.within(`climate.${i}`);
    const parts = { when: reading.at, ...(reading.where ? { where: reading.where } : {}) };
    const airTemperature = givenField(t, 'air', reading.air, 'reading', parts);
    const relativeHumidity = givenField(t, 'humidity', reading.humidity, 'reading', parts);
    const slab = givenField(t, 'slab', reading.slab, 'reading', parts);
    const air = { airTemperature, relativeHumidity };
    try {
      margins.push({
        at: reading.at,
        margin: t.figure('margin', dewMargin, { ...air, surfaceTemperature: slab, ...errors }),
        dewPoint: t.figure('dew-point', dewPoint, air),
        slab,
      });
    } catch (trouble) {
      if (!(trouble instanceof FormulaRefused)) throw trouble;
      notes.push({ code: 'survey-climate-refused', names: { at: reading.at.slice(0, 16).replace('T', ' ') } });
    }
  });
  return margins.length > 0
    ? { margins, notes, reasons: [], missing: [] }
    : { margins, notes, reasons: [NOT_READ], missing: [MISSING] };
}
