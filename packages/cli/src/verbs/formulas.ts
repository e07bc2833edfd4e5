import { ALL_FORMULAS } from '@slabwright/core';
import { columns } from '../print/lines.ts';
import { EXIT, type Terminal } from '../terminal.ts';

/** `formulas [word]`: every formula with what it takes and gives, or those that hold the word. */
export function formulas(search: string | undefined, options: { readonly json?: boolean }, terminal: Terminal): number {
  const word = search?.toLowerCase() ?? '';
  const found = [...ALL_FORMULAS.values()]
    .filter((f) => `${f.id} ${f.says} ${Object.keys(f.takes).join(' ')}`.toLowerCase().includes(word))
    .sort((a, b) => a.id.localeCompare(b.id));
  if (options.json) {
    const rows = found.map(({ id, says, equation, takes, gives, holds, defaults, source, locator }) => ({
      id,
      says,
      equation,
      takes,
      gives,
      holds,
      defaults,
      source,
      locator,
    }));
    terminal.out(`${JSON.stringify(rows, null, 2)}\n`);
    return EXIT.fine;
  }
  if (found.length === 0) {
    terminal.out(`No formula speaks of "${search}".\n`);
    return EXIT.fine;
  }
  for (const f of found) {
    const takes = Object.entries(f.takes)
      .map(([name, unit]) => `${name} (${unit})`)
      .join(', ');
    terminal.out(`${columns([[f.id, f.says]], { gap: 3 }).join('\n')}\n    takes ${takes}; gives ${f.gives}\n`);
  }
  terminal.out(
    `\n${found.length} formulas. Try one: slabwright calc film/wet-from-dry dryFilm="5 mil" volumeSolids="65 %"\n`,
  );
  return EXIT.fine;
}
