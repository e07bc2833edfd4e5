import { defineConfig, mergeConfig } from 'vitest/config';
import e2e from './vitest.e2e.config.ts';

/** Measures the built app in a slowed browser and prints a table. Only the weight of the scripts has a hard limit. */
const lab = mergeConfig(e2e, defineConfig({ test: { maxWorkers: 1, disableConsoleIntercept: true } }));

export default { ...lab, test: { ...lab.test, include: ['packages/web/e2e/**/*.lab.ts'] } };
