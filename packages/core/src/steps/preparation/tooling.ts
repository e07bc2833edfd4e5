import type { Tool } from '../../catalogue.ts';
import table from '../../data/tooling.json' with { type: 'json' };
import { FormulaRefused } from '../../kernel/refusal.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { continuousBreaker, currentDrawn } from '../../science/power/index.ts';
import { givenField, type OptionContext } from '../context.ts';
import type { PreparationPlan } from '../results.ts';

import { above } from '../system/limits.ts';

/** Bonds that suit a scratch hardness: one inside a band, both neighbours between two, none beyond the table. */
export function bondsFor(scratch: number): readonly string[] {
  const inside = table.bonds.filter(
    ({ scratch: [low, high] }) => scratch >= (low as number) && scratch <= (high as number),
  );
  if (inside.length > 0) return inside.map(({ bond }) => bond);
  const below = table.bonds.filter(({ scratch: band }) => (band[1] as number) < scratch).at(-1);
  const above = table.bonds.find(({ scratch: band }) => (band[0] as number) > scratch);
  return below && above ? [below.bond, above.bond] : [];
}

function bondSaid(ctx: OptionContext): readonly Said[] {
  const { scratch } = ctx.job.survey.slab ?? {};
  const wear = ctx.job.survey.testPatch?.wear;
  const tried = wear === undefined || wear === 'normal' ? [] : [{ code: `preparation-bond-after-${wear}` }];
  if (scratch === undefined) return [{ code: 'preparation-bond-scratch-first' }, ...tried];
  const [one, other] = bondsFor(scratch);
  const names = { scratch: `${scratch}` };
  if (!one) return [{ code: 'preparation-bond-beyond-table', names }, ...tried];
  const bond = `@preparation-bond-${one}`;
  return other
    ? [{ code: 'preparation-bond-between', names: { ...names, bond, other: `@preparation-bond-${other}` } }, ...tried]
    : [{ code: 'preparation-bond', names: { ...names, bond } }, ...tried];
}

function gritSaid(target: PreparationPlan['target']): readonly Said[] {
  const row = table.grits.find((grit) => grit.class === target.least.value);
  if (!row) return [{ code: 'preparation-grit-none', figures: { least: target.least.id } }];
  const names = { from: `${row.least}`, to: `${row.most}` };
  return [{ code: 'preparation-grit', figures: { least: target.least.id }, names }];
}

/** A socket's nominal voltage and a machine's plate differ by a few volts; beyond this they are different nets. */
const SAME_NET = 0.1;
/** Power factor and efficiency of a grinder's motor where the plate states none: an assumption. */
const ASSUMED_MOTOR = 0.85;

function powerSaid(ctx: OptionContext, trace: Trace, tool: Tool): readonly Said[] {
  const supply = ctx.job.survey.building?.power;
  const names = { tool: tool.name };
  if (!tool.power) return [];
  if (!supply) return [{ code: 'preparation-power-not-known', names }];
  const phases = tool.phases ?? 1;
  if (phases > supply.phases) return [{ code: 'preparation-power-phases', names }];
  const t = trace.within(`tool.${tool.id}`);
  const voltage = givenField(t, 'voltage', tool.voltage ?? supply.voltage, 'data sheet', { where: tool.name });
  const offered = givenField(t, 'supply-voltage', supply.voltage, 'reading');
  const figures = { voltage: voltage.id, supply: offered.id };
  if (Math.abs(voltage.value - offered.value) > SAME_NET * offered.value && !(supply.phases === 3 && phases === 1)) {
    return [{ code: 'preparation-power-other-voltage', names, figures }];
  }
  const motor = (name: string, stated: number | undefined) =>
    t.given(name, {
      value: stated ?? ASSUMED_MOTOR,
      unit: '1',
      origin: stated === undefined ? 'assumed' : 'data sheet',
      where: tool.name,
      ...(stated === undefined ? { says: 'preparation-assumed-motor' } : {}),
      shows: 'share',
    });
  try {
    const current = t.figure('current', currentDrawn, {
      activePower: givenField(t, 'power', tool.power, 'data sheet', { where: tool.name }),
      voltage,
      powerFactor: motor('power-factor', tool.powerFactor),
      efficiency: motor('efficiency', tool.efficiency),
      phases: t.given('phases', { value: phases, unit: '1', origin: 'data sheet', where: tool.name, shows: 'count' }),
    });
    const breaker = t.figure('breaker', continuousBreaker, { currents: [current] });
    const entered = givenField(t, 'supply-current', supply.current, 'reading');
    const over = above(breaker.value, entered.value);
    const code = over ? 'preparation-power-above' : 'preparation-power-at-or-below';
    return [{ code, names, figures: { current: current.id, breaker: breaker.id, entered: entered.id } }];
  } catch (trouble) {
    if (!(trouble instanceof FormulaRefused)) throw trouble;
    return [{ code: 'preparation-power-refused', names }];
  }
}

function massSaid(ctx: OptionContext, trace: Trace, tool: Tool): readonly Said[] {
  if (!tool.mass) return [];
  const mass = givenField(trace.within(`tool.${tool.id}`), 'mass', tool.mass, 'data sheet', { where: tool.name });
  const suspended = ctx.job.survey.slab?.grade === 'suspended';
  const code = suspended ? 'preparation-tool-mass-suspended' : 'preparation-tool-mass';
  // What one person carries needs no word about stairs and slabs.
  return mass.value < 40 ? [] : [{ code, names: { tool: tool.name }, figures: { mass: mass.id } }];
}

/** Bond, grit, mass and power of the tools for the chosen method. */
export function toolingSaid(
  ctx: OptionContext,
  trace: Trace,
  target: PreparationPlan['target'],
  chosen: string | undefined,
): readonly Said[] {
  if (chosen === undefined) return [];
  const tools = (ctx.catalogue.tools ?? []).filter(({ method }) => method === chosen);
  const cutting = chosen === 'grind' ? [...bondSaid(ctx), ...gritSaid(target)] : [];
  return [...cutting, ...tools.flatMap((tool) => [...massSaid(ctx, trace, tool), ...powerSaid(ctx, trace, tool)])];
}
