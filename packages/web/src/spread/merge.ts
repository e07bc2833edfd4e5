import type { Made } from '../job/use-planning.ts';
import type { ViewVoice } from '../job/voice.ts';
import { saidKey } from '../worker/said-key.ts';
import type { SpreadAnswer } from './api.ts';

/** The plan with the pours of one option in their place, and a voice that knows their numbers and sentences. */
export function withSpread(made: Made, { option, spread, shown, texts }: SpreadAnswer): Made {
  const { planned, voice } = made;
  const options = planned.plan.options.map((one) => (one.id === option ? { ...one, spread } : one));
  const own: ViewVoice = {
    ...voice,
    say: (said) => texts[saidKey(said)] ?? voice.say(said),
    show: (id) => (shown[id] ?? voice.entry(id)).text,
    entry: (id) => shown[id] ?? voice.entry(id),
    has: (id) => shown[id] !== undefined || voice.has(id),
  };
  return {
    ...made,
    planned: { ...planned, plan: { ...planned.plan, options } },
    voice: own,
  };
}
