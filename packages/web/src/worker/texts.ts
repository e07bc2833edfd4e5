import { answered, type Plan, type Said, type Voice } from '@slabwright/core';
import { saidKey } from './said-key.ts';

const isSaid = (value: object): value is Said => 'code' in value && typeof value.code === 'string';

/** Overrides carry a code too, but are a person's own words and never said through a message. */
const isOverride = (value: object): boolean => 'by' in value && 'why' in value;

const MOST_REMEMBERED = 5000;

/** Sentences said before, by what is said and the numbers in it, for one reader. */
let remembered = new Map<string, string>();
let rememberedFor = '';

function sentence(said: Said, key: string, voice: Voice): string {
  const numbers = Object.values(said.figures ?? {}).map((id) => {
    const entry = voice.entry(id);
    return 'value' in entry ? [entry.value, 'band' in entry ? entry.band : 0] : entry.values;
  });
  const whole = `${key}${JSON.stringify(numbers)}`;
  const known = remembered.get(whole);
  if (known !== undefined) return known;
  const text = voice.say(said);
  remembered.set(whole, text);
  return text;
}

function rememberFor({ reader }: Voice): void {
  const mark = `${reader.locale} ${reader.units} ${reader.currency ?? ''}`;
  if (mark === rememberedFor && remembered.size < MOST_REMEMBERED) return;
  remembered = new Map();
  rememberedFor = mark;
}

/** Every sentence of the plan, said once, by the key of what is said. */
export function textsOf(plan: Plan, voice: Voice): Record<string, string> {
  rememberFor(voice);
  const texts: Record<string, string> = {};
  const walk = (value: unknown): void => {
    if (value === null || typeof value !== 'object') return;
    if (Array.isArray(value)) {
      for (const one of value) walk(one);
      return;
    }
    if (isSaid(value) && !isOverride(value)) {
      const key = saidKey(value);
      texts[key] ??= sentence(value, key, voice);
    }
    for (const inner of Object.values(value)) walk(inner);
  };
  walk(plan.survey);
  walk(plan.site);
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
