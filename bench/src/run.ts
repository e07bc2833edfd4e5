import { fitsRows } from './fits.ts';
import { heatRows } from './heat.ts';
import { planRows } from './plan.ts';
import { spreadBench } from './spread.ts';
import { spreadPlanRows } from './spread-plan.ts';

if (process.argv[2] === 'spread') {
  spreadBench(new URL('../../reference/spread/', import.meta.url), (line) => process.stdout.write(`${line}\n`));
} else {
  const rows = [...planRows(), ...fitsRows(), ...heatRows(), ...spreadPlanRows()];
  const width = Math.max(...rows.map((row) => row.name.length));
  for (const { name, figure, budget, holds } of rows) {
    const word = holds === undefined ? '' : holds ? 'within' : 'OVER';
    process.stdout.write(`${name.padEnd(width)}  ${figure.padStart(12)}  ${budget.padStart(12)}  ${word}\n`);
  }
}
