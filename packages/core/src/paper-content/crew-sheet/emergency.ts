import { say } from '../context.ts';
import type { Block } from '../paper.ts';

/** The same on every front: nobody turns pages with resin in his eye. */
export const emergency = (): readonly Block[] => [
  {
    kind: 'list',
    marks: 'stop',
    lines: ['eyes', 'fire'].map((what) => say(`crew-emergency-${what}`)),
  },
];
