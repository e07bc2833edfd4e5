import { ALL_FORMULAS } from '@slabwright/core';
import { compareAll } from './compare.ts';
import { summaryOf, tableOf, tally } from './table.ts';

const outcomes = compareAll();
console.log(tableOf(outcomes));
console.log();
console.log(summaryOf(outcomes, ALL_FORMULAS));
if (tally(outcomes).failed > 0) process.exitCode = 1;
