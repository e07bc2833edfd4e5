import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Kill, killTimes } from './run.ts';

/** `npm run kill -w packages/store -- <kills> [seed]`: prints where the kills fell and whether anything was lost. */
const [kills = '50', seed = '1'] = process.argv.slice(2);
const folder = await mkdtemp(join(tmpdir(), 'slabwright-kill-'));
const child = fileURLToPath(new URL('./child.js', import.meta.url));
try {
  const results = await killTimes({ path: join(folder, 'store.db'), child, kills: Number(kills), seed: Number(seed) });
  report(results);
} finally {
  await rm(folder, { recursive: true });
}

function report(results: readonly Kill[]): void {
  for (const [index, { moment, inFlight, acknowledged, violations }] of results.entries()) {
    const flight = inFlight === null ? 'nothing in flight' : `write ${inFlight} in flight`;
    console.log(`kill ${index + 1}: ${moment}, ${flight}, ${acknowledged} more acknowledged`);
    for (const violation of violations) console.log(`  LOST OR HALF: ${violation}`);
  }
  const moments = new Map<string, number>();
  for (const { moment } of results) moments.set(moment, (moments.get(moment) ?? 0) + 1);
  const acknowledged = results.reduce((sum, kill) => sum + kill.acknowledged, 0);
  const violations = results.reduce((sum, kill) => sum + kill.violations.length, 0);
  console.log(`\n${results.length} kills, seed ${seed}; ${acknowledged} writes acknowledged, ${violations} violations`);
  for (const [moment, count] of moments) console.log(`  ${moment}: ${count}`);
  process.exitCode = violations === 0 ? 0 : 1;
}
