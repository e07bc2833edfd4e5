import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { serve } from '@slabwright/server';
import { chromium } from 'playwright-core';
import { build } from 'vite';
import type { TestProject } from 'vitest/node';
import { BROWSER_FLAGS, findBrowser } from './browser.ts';
import { type Certificate, certificate } from './certificate.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the browser takes orders. */
    readonly browser: string;
    /** The app as this program's own server serves it. */
    readonly app: string;
    /** Folder of the built app. */
    readonly built: string;
    /** Made for this run; the browser trusts it and no other that nobody vouches for. */
    readonly certificate: Certificate;
  }
}

const web = fileURLToPath(new URL('..', import.meta.url));

/** Builds the app once, serves it, and starts one browser for all tests. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const found = findBrowser();
  const place = mkdtempSync(join(tmpdir(), 'slabwright-e2e-'));
  // A folder of its own: whoever serves the usual one meanwhile keeps it.
  const built = join(place, 'web');
  await buildApp(built);
  const data = join(place, 'data');
  const trusted = await certificate();
  const serving = await serve({ data, port: 0, web: built, log: (line) => process.stderr.write(`${line}\n`) });
  const running = await chromium.launchServer({
    executablePath: found.path,
    args: [...BROWSER_FLAGS, `--ignore-certificate-errors-spki-list=${trusted.spki}`],
    env: { ...process.env, ...found.env } as Record<string, string>,
  });
  project.provide('browser', running.wsEndpoint());
  project.provide('app', serving.address);
  project.provide('built', built);
  project.provide('certificate', trusted);
  return async () => {
    await running.close();
    await serving.stop();
    rmSync(place, { recursive: true });
  };
}

/** The app as a visitor gets it. The test runner's own NODE_ENV would make it a build for development. */
async function buildApp(outDir: string): Promise<void> {
  const before = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  await build({ configFile: join(web, 'vite.config.ts'), mode: 'production', logLevel: 'error', build: { outDir } });
  process.env.NODE_ENV = before;
}
