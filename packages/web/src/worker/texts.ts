import { answered, type Plan, type Said, type Voice } from '@slabwright/core';
import { saidKey } from './said-key.ts';

const isSaid = (value: object): value is Said => 'code' in value && typeof value.code === 'string';

/** Overrides carry a code too, but are a person's own words and never said through a message. */
const isOverride = (value: object): boolean => 'by' in value && 'why' in value;

/** Every sentence of the plan, said once, by the key of what is said. */
export function textsOf(plan: Plan, voice: Voice): Record<string, string> {
  const texts: Record<string, string> = {};
  const walk = (value: unknown): void => {
    if (value === null || typeof value !== 'object') return;
    if (Array.isArray(value)) {
      for (const one of value) walk(one);
      return;
    }
    if (isSaid(value) && !isOverride(value)) {
      const key = saidKey(value);
      texts[key] ??= voice.say(value);
    }
    for (const inner of Object.values(value)) walk(inner);
  };
  walk(plan.survey);
  walk(plan.options);
  return texts;
}

/** Words of the names that stand in price lines (`@price-labour`). */
export function lineNames(plan: Plan, voice: Voice): Record<string, string> {
  const names: Record<string, string> = {};
  for (const { price } of plan.options) {
    if (!answered(price)) continue;
    for (const { name } of price.lines) if (name.startsWith('@')) names[name] = voice.word(name.slice(1));
  }
  return names;
}
