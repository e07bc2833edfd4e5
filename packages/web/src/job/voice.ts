import type { Said } from '@slabwright/core';
import type { Planned, Shown, Units } from '../worker/api.ts';
import { saidKey } from '../worker/said-key.ts';

/** The plan's words and numbers for the person at this screen; made in the worker, looked up here. */
export interface ViewVoice {
  readonly units: Units;
  readonly currency?: string;
  say(said: Said): string;
  /** Words of a key: a task, a method. */
  word(key: string): string;
  /** Words of a key a person may have made up, such as a task of their own. */
  wordOr(key: string, otherwise: string): string;
  /** A name of a person's own or one said through `@key`; product, pack or media names by id. */
  name(id: string): string;
  show(id: string): string;
  entry(id: string): Shown;
  has(id: string): boolean;
}

export function viewVoice(planned: Planned, words: Readonly<Record<string, string>>): ViewVoice {
  const entry = (id: string): Shown => {
    const found = planned.shown[id];
    if (!found) throw new Error(`the plan holds no entry ${id}`);
    return found;
  };
  return {
    units: planned.units,
    ...(planned.currency ? { currency: planned.currency } : {}),
    say(said) {
      const text = planned.texts[saidKey(said)];
      if (text === undefined) throw new Error(`nothing was said for ${said.code}`);
      return text;
    },
    word(key) {
      const text = words[key];
      if (text === undefined) throw new Error(`no words for ${key}`);
      return text;
    },
    wordOr: (key, otherwise) => words[key] ?? otherwise,
    name: (id) => planned.names[id] ?? id,
    show: (id) => entry(id).text,
    entry,
    has: (id) => planned.shown[id] !== undefined,
  };
}
