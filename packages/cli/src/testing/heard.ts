import type { Terminal } from '../terminal.ts';

/** What a verb printed. */
export interface Heard {
  out: string;
  err: string;
}

export const heard = (): Heard => ({ out: '', err: '' });

/** A terminal without colour, on the evening the garage is planned, that keeps what is printed. */
export const terminalInto = (said: Heard, width = 100): Terminal => ({
  out: (text) => {
    said.out += text;
  },
  err: (text) => {
    said.err += text;
  },
  colour: false,
  width,
  now: () => '2026-05-12T18:00:00-06:00',
});
