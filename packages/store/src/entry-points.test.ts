import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const source = dirname(fileURLToPath(import.meta.url));

/** Every module an entry point reaches, own files by path and others by name; imports of types alone vanish. */
function reached(entry: string): ReadonlySet<string> {
  const found = new Set<string>();
  const waiting = [join(source, entry)];
  for (let file = waiting.pop(); file !== undefined; file = waiting.pop()) {
    if (found.has(file)) continue;
    found.add(file);
    const text = readFileSync(file, 'utf8');
    for (const [statement, name] of text.matchAll(/^(?:import|export)\b[^;]*?from '([^']+)';/gm)) {
      if (name === undefined || /^(?:import|export) type\b/.test(statement)) continue;
      if (name.startsWith('.')) waiting.push(join(dirname(file), name));
      else found.add(name);
    }
  }
  return found;
}

test.each(['index.ts', 'memory/index.ts', 'indexeddb/index.ts', 'acceptance/index.ts', 'faults.ts'])(
  'A1: what a page loads through %s reaches neither Node nor the embedded database',
  (entry) => {
    const names = [...reached(entry)].filter((name) => !name.startsWith(source));
    // Both run in a page; the digest library touches no platform module.
    expect(names.filter((name) => name !== 'idb' && !name.startsWith('@noble/hashes/'))).toEqual([]);
  },
);

test('A1: the reading of imports does see what the embedded database needs', () => {
  expect([...reached('sqlite/index.ts')]).toEqual(expect.arrayContaining(['libsql', 'kysely', 'node:fs']));
});
