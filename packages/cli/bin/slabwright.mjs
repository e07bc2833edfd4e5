#!/usr/bin/env node
import { run } from '../dist/index.js';

process.exitCode = await run(process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  colour: process.stdout.isTTY === true && process.env.NO_COLOR === undefined,
  width: process.stdout.columns ?? 100,
  now: () => new Date().toISOString(),
});
