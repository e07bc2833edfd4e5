import { instantIn } from '../../kernel/instant.ts';
import type { Milestone } from '../../science/cure/index.ts';
import type { Span } from '../results.ts';

/** Instants are said in whole minutes: nobody keeps to the second what a forecast gives. */
const MINUTE = 60_000;

export const minute = (epoch: number, zone: string): string => instantIn(Math.round(epoch / MINUTE) * MINUTE, zone);

export const spanOf = ({ at, low, high }: Milestone, zone: string): Span => ({
  at: minute(at, zone),
  low: minute(low, zone),
  ...(high === undefined ? {} : { high: minute(high, zone) }),
});

/** `2026-05-13 22:10`: how an instant is named in a sentence. */
export const spoken = (epoch: number, zone: string): string => minute(epoch, zone).slice(0, 16).replace('T', ' ');
