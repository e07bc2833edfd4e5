import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { serve } from '@slabwright/server';
import { chromium } from 'playwright-core';
import { build } from 'vite';
import type { TestProject } from 'vitest/node';
import { BROWSER_FLAGS, findBrowser } from './browser.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the browser takes orders. */
    readonly browser: string;
    /** The app as this program's own server serves it. */
    readonly app: string;
    /** Folder of the built app. */
    readonly built: string;
  }
}

const web = fileURLToPath(new URL('..', import.meta.url));

/** Builds the app once, serves it, and starts one browser for all tests. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const found = findBrowser();
  const built = join(web, 'dist');
  // The builder takes its mode from the environment, and the tests' own would make it a build for development.
  await build({ configFile: join(web, 'vite.config.ts'), mode: 'production', logLevel: 'warn' });
  const data = mkdtempSync(join(tmpdir(), 'slabwright-e2e-'));
  const serving = await serve({ data, port: 0, web: built, log: (line) => process.stderr.write(`${line}\n`) });
  const running = await chromium.launchServer({
    executablePath: found.path,
    args: [...BROWSER_FLAGS],
    env: { ...process.env, ...found.env } as Record<string, string>,
  });
  project.provide('browser', running.wsEndpoint());
  project.provide('app', serving.address);
  project.provide('built', built);
  return async () => {
    await running.close();
    await serving.stop();
    rmSync(data, { recursive: true });
  };
}
