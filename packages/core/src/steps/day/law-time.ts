import { causeFromBand, Z90 } from '../../kernel/band.ts';
import type { Figure, Given, Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { GAS_CONSTANT, ZERO_CELSIUS } from '../../science/constants.ts';
import { type CureLaw, speaksAt } from '../../science/cure/index.ts';
import { timeAtTemperature } from '../formulas/day.ts';

interface Leg {
  readonly time: number;
  readonly temperature: number;
  readonly energy: number;
  readonly energyDeviation: number;
  readonly deviation: number;
}

const inverse = (celsius: number): number => 1 / (celsius + ZERO_CELSIUS);

/** The straight stretch of a law that a temperature lies on: its middle point and its slope. */
function legAt(law: CureLaw, temperature: number): Leg {
  if (law.kind !== 'interpolated')
    return {
      time: Math.exp(law.centreLog),
      temperature: 1 / law.centreInverse - ZERO_CELSIUS,
      energy: law.energy,
      energyDeviation: law.energyDeviation,
      deviation: law.centreDeviation,
    };
  const { points } = law;
  const above = points.findIndex((point) => point.temperature >= temperature);
  const i = Math.min(points.length - 1, Math.max(1, above));
  const [a, b] = [points[i - 1], points[i]];
  if (!a || !b) throw new Error('an interpolated law has two points');
  const energy = (GAS_CONSTANT * Math.log(a.time / b.time)) / (inverse(a.temperature) - inverse(b.temperature));
  return { time: a.time, temperature: a.temperature, energy, energyDeviation: 0, deviation: law.centreDeviation };
}

/** The law of a sheet's time, recorded once, and the time it gives at any temperature it speaks for. */
export class LawTimes {
  private readonly law: CureLaw;
  private readonly trace: Trace;
  private readonly where: string;
  private readonly legs = new Map<string, { time: Given<'s'>; at: Given<'°C'>; energy: Given<'J/mol'> }>();

  constructor(law: CureLaw, trace: Trace, where: string) {
    this.law = law;
    this.trace = trace;
    this.where = where;
  }

  /** Undefined where the sheet does not speak. */
  at(name: string, temperature: Known<'°C'>): Figure<'s'> | undefined {
    if (!speaksAt(this.law, temperature.value)) return undefined;
    const { time, at, energy } = this.legOf(temperature.value);
    return this.trace.figure(name, timeAtTemperature, {
      sheetTime: time,
      sheetTemperature: at,
      temperature,
      activationEnergy: energy,
    });
  }

  private legOf(temperature: number) {
    const leg = legAt(this.law, temperature);
    const key = `${leg.temperature}`;
    const known = this.legs.get(key);
    if (known) return known;
    const t = this.trace.within(`leg-${this.legs.size}`);
    const spread = Z90 * leg.deviation * leg.time;
    const half = Z90 * leg.energyDeviation;
    const one = this.law.points.length === 1;
    const made = {
      time: t.given('sheet-time', {
        value: leg.time,
        unit: 's',
        origin: 'data sheet',
        where: this.where,
        shows: 'duration',
        causes: causeFromBand('times of the sheet', [leg.time - spread, leg.time + spread]),
      }),
      at: t.given('sheet-temperature', {
        value: leg.temperature,
        unit: '°C',
        origin: 'data sheet',
        where: this.where,
        shows: 'temperature',
      }),
      energy: t.given('energy', {
        value: leg.energy,
        unit: 'J/mol',
        origin: one ? 'assumed' : 'data sheet',
        where: this.where,
        ...(one ? { says: 'cure-energy-assumed' } : {}),
        shows: 'energy-per-mole',
        ...(half > 0 ? { causes: causeFromBand('energy of the cure', [leg.energy - half, leg.energy + half]) } : {}),
      }),
    };
    this.legs.set(key, made);
    return made;
  }
}
