import type { Said } from '@slabwright/core';

/** One text for one thing said, so that the worker's sentence is found again on the screen. */
export const saidKey = ({ code, figures, names }: Said): string => JSON.stringify([code, figures ?? {}, names ?? {}]);
