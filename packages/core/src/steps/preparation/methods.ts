import table from '../../data/csp-methods.json' with { type: 'json' };
import silica from '../../data/silica-table1.json' with { type: 'json' };
import type { Known } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import type { OptionContext } from '../context.ts';
import type { MethodRanked, PreparationPlan } from '../results.ts';
import { type RateBook, timeOf } from './rates.ts';

type Row = (typeof table.methods)[number];
type Classes = readonly [least: number, most: number];

/** Ids of the methods the table knows, for the check of a job. */
export const METHOD_IDS: readonly string[] = table.methods.map(({ id }) => id);

export const methodKey = (id: string): string => `@preparation-method-${id}`;

const editionsOf = (row: Row): readonly Classes[] => Object.values(row.reaches) as unknown as readonly Classes[];

/** Classes all editions agree a method reaches, and those at least one claims. */
export function reachOf(id: string): { readonly sure: Classes; readonly claimed: Classes } | undefined {
  const row = table.methods.find((method) => method.id === id);
  if (!row) return undefined;
  const all = editionsOf(row);
  const sureLeast = Math.max(...all.map(([low]) => low));
  return {
    sure: [sureLeast, Math.max(sureLeast, Math.min(...all.map(([, high]) => high)))],
    claimed: [Math.min(...all.map(([low]) => low)), Math.max(...all.map(([, high]) => high))],
  };
}

const meets = ([low, high]: Classes, least: number, most: number): boolean => high >= least && low <= most;

/** How a method stands to the profile wanted: surely, by one edition only, or not. */
export function fitOf(
  id: string,
  least: number,
  most: number,
): 'sure' | 'editions differ' | 'too smooth' | 'too rough' {
  const reach = reachOf(id);
  if (!reach) throw new Error(`no method ${id}: the check let it through`);
  if (meets(reach.sure, least, most)) return 'sure';
  if (meets(reach.claimed, least, most)) return 'editions differ';
  return reach.claimed[1] < least ? 'too smooth' : 'too rough';
}

interface Look {
  readonly least: number;
  readonly most: number;
  readonly film: boolean;
  readonly tools: ReadonlySet<string>;
}

const WHY = {
  'too smooth': 'preparation-method-too-smooth',
  'too rough': 'preparation-method-too-rough',
  'editions differ': 'preparation-method-editions-differ',
} as const;

function whyOf(row: Row, look: Look): { readonly fits: boolean; readonly why: readonly Said[] } {
  const fit = fitOf(row.id, look.least, look.most);
  const leavesFilm = look.film && !row.takesFilm;
  // Washing changes no profile, so it makes none.
  const makesNone = !row.changesProfile && look.least > 1;
  const why: Said[] = [];
  if (fit !== 'sure') why.push({ code: WHY[fit] });
  if (leavesFilm) why.push({ code: 'preparation-method-leaves-film' });
  if (row.microCracking === 'raised') why.push({ code: 'preparation-method-micro-cracks' });
  if (row.water) why.push({ code: 'preparation-method-wets-slab' });
  if (silica.notOnTheTable.includes(row.id)) why.push({ code: 'preparation-method-dust-not-on-table' });
  if (!look.tools.has(row.id)) why.push({ code: 'preparation-method-no-tool' });
  return { fits: (fit === 'sure' || fit === 'editions differ') && !leavesFilm && !makesNone, why };
}

const DUST = ['low', 'middle', 'high'];

/** Methods in the order to think of them: those that reach the profile, with a tool at hand, in the fewest hours. */
export function rankMethods(
  ctx: OptionContext,
  trace: Trace,
  target: PreparationPlan['target'],
  film: boolean,
  floor: Known<'m²'>,
  rates: RateBook,
): readonly MethodRanked[] {
  const tools = new Set((ctx.catalogue.tools ?? []).map(({ method }) => method));
  const look: Look = { least: target.least.value, most: target.most.value, film, tools };
  const ranked = table.methods.map((row): MethodRanked => {
    const t = trace.within(`method.${row.id}`);
    const reach = reachOf(row.id);
    if (!reach) throw new Error(`no method ${row.id}`);
    const source = table.editions['1997'].source;
    const given = (name: string, value: number): Known<'1'> =>
      t.given(name, { value, unit: '1', origin: 'table', source, shows: 'count' });
    const found = rates.rate(row.id);
    const timed = found ? timeOf(t, 'whole-floor', { area: floor }, found) : undefined;
    return {
      method: row.id,
      reaches: { least: given('least', reach.sure[0]), most: given('most', reach.sure[1]) },
      ...whyOf(row, look),
      ...(timed ? { time: timed.time } : {}),
      dust: row.dust as MethodRanked['dust'],
      microCracking: row.microCracking as MethodRanked['microCracking'],
    };
  });
  const order = (m: MethodRanked): readonly number[] => [
    m.fits ? 0 : 1,
    tools.has(m.method) ? 0 : 1,
    m.time ? Math.round(m.time.value / 60) : Number.MAX_SAFE_INTEGER,
    DUST.indexOf(m.dust),
    m.microCracking === 'low' ? 0 : 1,
  ];
  return ranked
    .map((method, place) => ({ method, key: [...order(method), place] }))
    .sort((a, b) => {
      const i = a.key.findIndex((value, k) => value !== b.key[k]);
      return i < 0 ? 0 : (a.key[i] as number) - (b.key[i] as number);
    })
    .map(({ method }) => method);
}

/**
 * The method of the option, or the first that fits. A chosen one that no edition lets reach the profile is a stop,
 * unless a comparator on this floor showed that it does.
 */
export function chooseMethod(
  ctx: OptionContext,
  target: PreparationPlan['target'],
  methods: readonly MethodRanked[],
): { readonly chosen?: string; readonly reasons: readonly Reason[] } {
  const wanted = ctx.option.preparation?.method;
  const best = methods.find(({ fits }) => fits);
  const chosen = wanted ?? best?.method;
  const figures = { least: target.least.id, most: target.most.id };
  if (chosen === undefined) {
    return { reasons: [{ verdict: 'not known', code: 'preparation-no-method', figures }] };
  }
  const names = { method: methodKey(chosen) };
  const found = methods.find(({ method }) => method === chosen);
  if (!found) throw new Error(`no method ${chosen}: the check let it through`);
  if (provenOnFloor(ctx, target, chosen)) return { chosen, reasons: [] };
  if (!found.fits) {
    const other = best ? { names: { method: methodKey(best.method) } } : {};
    const code = best ? 'preparation-method-does-not-fit-lift' : 'preparation-target-lift';
    const reason: Reason = {
      verdict: 'stop',
      code: 'preparation-method-does-not-fit',
      figures,
      names,
      source: table.editions['2013'].source,
      lift: { code, ...other },
    };
    return { chosen, reasons: [reason] };
  }
  const differ = found.why.some(({ code }) => code === 'preparation-method-editions-differ');
  const reason: Reason = { verdict: 'caution', code: 'preparation-chosen-editions-differ', figures, names };
  return { chosen, reasons: differ ? [reason] : [] };
}

/** A method that wets the slab: what the moisture tests proved before it counts no longer. */
export function wetWork(chosen: string | undefined): readonly Reason[] {
  if (!table.methods.some(({ id, water }) => id === chosen && water)) return [];
  const names = { method: methodKey(chosen ?? '') };
  const lift = { code: 'preparation-wets-slab-lift' };
  return [{ verdict: 'not known', code: 'preparation-wets-slab', names, source: 'survey-common-practice', lift }];
}

/** True when a comparator held on this floor, prepared that way, showed the profile wanted. */
function provenOnFloor(ctx: OptionContext, { least, most }: PreparationPlan['target'], method: string): boolean {
  const { testPatch, afterPreparation } = ctx.job.survey;
  const inside = (profile: number): boolean => profile >= least.value && profile <= most.value;
  if (testPatch?.method === method && testPatch.profile !== undefined && inside(testPatch.profile)) return true;
  const read = afterPreparation?.profiles ?? [];
  return read.length > 0 && read.every(({ profile }) => inside(profile));
}
