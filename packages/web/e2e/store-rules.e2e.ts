import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type AcceptanceResult, acceptanceCases } from '@slabwright/store/acceptance';
import { build } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { arrive, withBrowser } from './app-page.ts';
import { type StaticHost, staticHost } from './static-host.ts';

withBrowser();

const out = mkdtempSync(join(tmpdir(), 'slabwright-rules-'));
const pages = fileURLToPath(new URL('./pages', import.meta.url));
let host: StaticHost;

beforeAll(async () => {
  const conditions = ['@slabwright/source', 'module', 'browser', 'production'];
  const input = join(pages, 'acceptance.html');
  await build({
    root: pages,
    configFile: false,
    logLevel: 'warn',
    resolve: { conditions },
    build: { outDir: out, emptyOutDir: true, target: 'es2023', rolldownOptions: { input } },
  });
  host = await staticHost({ folder: out });
});
afterAll(async () => {
  await host.stop();
  rmSync(out, { recursive: true });
});

test('every rule of the store holds in the browser’s own database', async () => {
  const { page } = await arrive(`${host.address}acceptance.html`);
  await page.waitForFunction(() => document.title === 'done', null, { timeout: 50_000 });
  const results = await page.evaluate(() => (window as unknown as { results: readonly AcceptanceResult[] }).results);
  expect(results.filter(({ failure }) => failure !== null)).toEqual([]);
  expect(results).toHaveLength(acceptanceCases.length);
});
