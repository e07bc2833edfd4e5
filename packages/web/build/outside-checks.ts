import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';

const NAME = 'virtual:outside-checks';
const ROWS = fileURLToPath(new URL('../../../reference/rows', import.meta.url));

/** Fields of one line of comma separated text, quotes respected. */
function fieldsOf(line: string): readonly string[] {
  const fields: string[] = [];
  let field = '';
  let quoted = false;
  for (const sign of line) {
    if (sign === '"') quoted = !quoted;
    else if (sign === ',' && !quoted) {
      fields.push(field);
      field = '';
    } else field += sign;
  }
  return [...fields, field];
}

/** How many check values stand in reference/rows for each formula, by where they come from. */
function counted(): Record<string, Record<string, number>> {
  const counts: Record<string, Record<string, number>> = {};
  for (const file of readdirSync(ROWS).filter((name) => name.endsWith('.csv'))) {
    const lines = readFileSync(`${ROWS}/${file}`, 'utf8')
      .split('\n')
      .filter((line) => line !== '' && !line.startsWith('#'));
    const head = fieldsOf(lines[0] ?? '');
    const [formulaAt, markAt] = [head.indexOf('formula'), head.indexOf('mark')];
    if (formulaAt < 0 || markAt < 0) throw new Error(`${file} has no columns formula and mark`);
    for (const line of lines.slice(1)) {
      const fields = fieldsOf(line);
      const [formula, mark] = [fields[formulaAt] ?? '', fields[markAt] ?? ''];
      counts[formula] ??= {};
      const own = counts[formula];
      own[mark] = (own[mark] ?? 0) + 1;
    }
  }
  return counts;
}

/** Hands the counts to the plan worker, so that a working can say how its law was checked from outside. */
export const outsideChecks = (): Plugin => ({
  name: 'outside-checks',
  resolveId: (id) => (id === NAME ? `\0${NAME}` : null),
  load: (id) => (id === `\0${NAME}` ? `export const OUTSIDE_CHECKS = ${JSON.stringify(counted())}` : null),
});
