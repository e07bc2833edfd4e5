import { type Entry, type Reader, type Voice, voice } from '@slabwright/core';

/** A voice for messages that need no plan: issues and refusals. The terminal always writes a decimal point. */
export const plainVoice = (
  reader: Reader = { locale: 'en-US', units: 'metric' },
  entries: Readonly<Record<string, Entry>> = {},
): Voice => voice('en', reader, entries);
