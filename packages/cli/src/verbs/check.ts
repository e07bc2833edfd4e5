import { type FileOptions, load } from '../load.ts';
import { nowOf } from '../now.ts';
import { EXIT, type Terminal } from '../terminal.ts';

/** `check JOB`: reads everything and plans nothing; bad input has been thrown by `load`. */
export function check(path: string, options: FileOptions & { readonly json?: boolean }, terminal: Terminal): number {
  const { job, catalogue, priceBook, warnings } = load(path, options, nowOf(options, terminal));
  if (options.json) {
    terminal.out(`${JSON.stringify({ issues: [], warnings })}\n`);
    return EXIT.fine;
  }
  for (const warning of warnings) terminal.out(`look again: ${warning}\n`);
  const areas = job.areas.length === 1 ? '1 area' : `${job.areas.length} areas`;
  const ways = job.options.length === 1 ? '1 option' : `${job.options.length} options`;
  const prices = priceBook ? `prices of ${priceBook.date ?? priceBook.id}` : 'no price book';
  terminal.out(
    `${job.title}: the files read well. ${areas}, ${ways}, ${catalogue.products.length} products, ${prices}.\n`,
  );
  return EXIT.fine;
}
