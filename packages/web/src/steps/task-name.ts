import type { ViewVoice } from '../job/voice.ts';

/** What a task is called; a firm's own task by its key. */
export const taskName = (voice: ViewVoice, work: string): string =>
  voice.wordOr(`task-${work}`, work.replaceAll('-', ' '));
