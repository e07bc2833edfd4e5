import rules from '../../data/moisture-rules.json' with { type: 'json' };
import { tabled } from '../../data/tabled.ts';
import type { MoistureTest, Survey } from '../../job.ts';
import { daysBetween, epochOf, type Instant, isInstant } from '../../kernel/instant.ts';
import type { Said } from '../../kernel/said.ts';
import { above, below } from '../system/limits.ts';

/**
 * Which moisture results count. A number without its method, edition, date, place, depth and conditions is a rumour:
 * it is kept and shown, but nothing is judged by it.
 */

interface Rule {
  readonly value: string;
}
interface MethodRules {
  readonly depthOneSide?: Rule;
  readonly depthTwoSides?: Rule;
  readonly serviceConditions?: Rule;
  readonly wait?: Rule;
  readonly waitOldEdition?: Rule & { readonly untilYear: number };
  readonly waitMost?: Rule;
  readonly airLeast?: Rule;
  readonly airMost?: Rule;
}

const METHODS: Readonly<Record<string, MethodRules>> = rules.methods;
const OLDEST_DAYS = tabled(rules.oldest.value, 's') / 86_400;
/** A share typed as 40 % and one worked out as 39.6 % are the same hole. */
const DEPTH_SLACK = 0.005;

/** Methods that give a number a data sheet can be compared with. */
export const givesNumber = (method: string): boolean => method in METHODS;

/** The year an edition names, `F2170-19a` → 2019; undefined when it names none. */
export function yearOfEdition(edition: string): number | undefined {
  const full = /(?:^|\D)((?:19|20)\d{2})(?!\d)/.exec(edition);
  if (full) return Number(full[1]);
  const short = /-(\d{2})(?!\d)/.exec(edition);
  if (!short) return undefined;
  const two = Number(short[1]);
  return two >= 70 ? 1900 + two : 2000 + two;
}

export const hasValue = (test: MoistureTest): boolean => {
  if (test.method === 'ASTM F2170' || test.method === 'BS 8203 hood') return test.humidity !== undefined;
  if (test.method === 'ASTM F1869') {
    return test.emission !== undefined || (!!test.massGain && !!test.dishArea && !!test.wait);
  }
  if (test.method === 'carbide') return test.content !== undefined;
  if (test.method === 'ASTM D4263') return test.sheet !== undefined;
  return test.humidity !== undefined || test.content !== undefined;
};

function troubleWithTime(test: MoistureTest, survey: Survey, now: Instant): readonly Said[] {
  if (!test.on) return [{ code: 'survey-moisture-no-date' }];
  const future = isInstant(test.on) ? epochOf(test.on) > epochOf(now) : daysBetween(test.on, now) < 0;
  if (future) return [{ code: 'survey-moisture-in-the-future', names: { date: test.on.slice(0, 10) } }];
  const wet = survey.moisture?.wetSince;
  if (wet && daysBetween(test.on, wet) >= 0) return [{ code: 'survey-moisture-before-water', names: { date: wet } }];
  const days = daysBetween(test.on, now);
  return days > OLDEST_DAYS ? [{ code: 'survey-moisture-too-old', names: { days: `${days}`, most: '30' } }] : [];
}

function troubleWithDepth(test: MoistureTest, rule: MethodRules, survey: Survey): readonly Said[] {
  if (!rule.depthOneSide || !rule.depthTwoSides) return [];
  if (!test.depthShare) return [{ code: 'survey-moisture-no-depth' }];
  // Only a slab known to dry on both sides may be read at the lesser depth.
  const both = survey.slab?.grade === 'suspended';
  const needed = both ? rule.depthTwoSides : rule.depthOneSide;
  const shallow = below(test.depthShare.value, tabled(needed.value, '1') - DEPTH_SLACK);
  return shallow
    ? [{ code: 'survey-moisture-too-shallow', names: { depth: test.depthShare.typed, needed: needed.value } }]
    : [];
}

function troubleWithWait(test: MoistureTest, rule: MethodRules): readonly Said[] {
  if (!rule.wait) return [];
  if (!test.wait) return [{ code: 'survey-moisture-no-wait' }];
  const year = yearOfEdition(test.edition ?? '');
  const old = rule.waitOldEdition;
  // An edition without a year may be the old one: the longer wait is asked. No edition at all is said by itself.
  const least =
    old && test.edition !== undefined && (year === undefined || year <= old.untilYear) ? old.value : rule.wait.value;
  if (below(test.wait.value, tabled(least, 's'))) {
    return [{ code: 'survey-moisture-wait-too-short', names: { wait: test.wait.typed, least } }];
  }
  if (rule.waitMost && above(test.wait.value, tabled(rule.waitMost.value, 's'))) {
    return [{ code: 'survey-moisture-wait-too-long', names: { wait: test.wait.typed, most: rule.waitMost.value } }];
  }
  return [];
}

function troubleWithConditions(test: MoistureTest, rule: MethodRules): readonly Said[] {
  const said: Said[] = [];
  if (rule.serviceConditions) {
    const needed = rule.serviceConditions.value;
    if (!test.serviceConditionsFor) said.push({ code: 'survey-moisture-no-conditions', names: { needed } });
    else if (below(test.serviceConditionsFor.value, tabled(needed, 's'))) {
      const got = test.serviceConditionsFor.typed;
      said.push({ code: 'survey-moisture-conditions-too-short', names: { got, needed } });
    }
  }
  const { airLeast, airMost } = rule;
  if (airLeast && airMost && test.air) {
    const { value, typed } = test.air;
    if (below(value, tabled(airLeast.value, '°C')) || above(value, tabled(airMost.value, '°C'))) {
      const names = { air: typed, least: airLeast.value, most: airMost.value };
      said.push({ code: 'survey-moisture-air-outside', names });
    }
  }
  return said;
}

/** Why a result does not count; empty when it does. */
export function whyNotCounted(test: MoistureTest, survey: Survey, now: Instant): readonly Said[] {
  const rule = METHODS[test.method];
  if (!rule) {
    return [{ code: test.method === 'meter' ? 'survey-moisture-meter' : 'survey-moisture-sheet-only' }];
  }
  return [
    ...(hasValue(test) ? [] : [{ code: 'survey-moisture-no-value' }]),
    ...(test.edition ? [] : [{ code: 'survey-moisture-no-edition' }]),
    ...(test.where ? [] : [{ code: 'survey-moisture-no-place' }]),
    ...troubleWithTime(test, survey, now),
    ...troubleWithDepth(test, rule, survey),
    ...troubleWithWait(test, rule),
    ...troubleWithConditions(test, rule),
  ];
}
