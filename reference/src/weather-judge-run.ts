import { readFileSync } from 'node:fs';
import { judgeGround, judgementTable } from './weather-judge.ts';

const folder = new URL('../weather/', import.meta.url);
for (const year of [2018, 2019]) {
  const csv = readFileSync(new URL(`uscrn_dinosaur_co_${year}_may_oct.csv`, folder), 'utf8');
  console.log(judgementTable(judgeGround(csv, year)));
  console.log(year === 2018 ? 'The year the ground was found on.\n' : 'The year judged: nothing was found on it.');
}
