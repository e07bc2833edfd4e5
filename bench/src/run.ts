import { fitsRows } from './fits.ts';
import { heatRows } from './heat.ts';
import { planRows } from './plan.ts';
import { spreadPlanRows } from './spread-plan.ts';

const rows = [...planRows(), ...fitsRows(), ...heatRows(), ...spreadPlanRows()];
const width = Math.max(...rows.map((row) => row.name.length));
for (const { name, figure, budget, holds } of rows) {
  const word = holds === undefined ? '' : holds ? 'within' : 'OVER';
  process.stdout.write(`${name.padEnd(width)}  ${figure.padStart(12)}  ${budget.padStart(12)}  ${word}\n`);
}
