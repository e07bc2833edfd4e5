import { serve } from './listen.ts';

/** Serves a data folder until it is killed; the address is its first line. */
const [data] = process.argv.slice(2);
if (data === undefined) throw new Error('usage: kill-child <data folder>');
const { address } = await serve({ data, port: 0, demo: false, log: (line) => process.stderr.write(`${line}\n`) });
process.stdout.write(`${address}\n`);
