import { heading, type PaperContext, say } from '../context.ts';
import type { Block } from '../paper.ts';

/** The same on every page: nobody turns pages with resin in his eye. */
export function emergency(_ctx: PaperContext): readonly Block[] {
  return [
    heading('crew-emergency'),
    {
      kind: 'list',
      marks: 'stop',
      lines: ['eyes', 'skin', 'breath', 'hot-pail', 'fire', 'number'].map((what) => say(`crew-emergency-${what}`)),
    },
  ];
}
