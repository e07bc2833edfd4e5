import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { judgeGround, judgementTable } from './weather-judge.ts';

describe('measured ground of 2019, found on 2018', () => {
  const csv = readFileSync(new URL('../weather/uscrn_dinosaur_co_2019_may_oct.csv', import.meta.url), 'utf8');
  const judged = judgeGround(csv, 2019);
  const row = (method: string) => {
    const found = judged.rows.find((each) => each.method === method);
    if (found === undefined) throw new Error(`no row ${method}`);
    return found;
  };

  test('with six readings at most half of yesterday’s error and three tenths of the air’s', () => {
    expect(judged.days).toBeGreaterThan(40);
    const six = row('method, 6 readings');
    expect(six.toYesterday, judgementTable(judged)).toBeLessThanOrEqual(0.5);
    expect(six.toAir).toBeLessThanOrEqual(0.3);
  });

  // On days with rain on them or just before, the readings explain evaporation that the next day does not have: there
  // the fit gains nothing, and the table says so.
  test('on dry days six readings bring the next day nearer than none', () => {
    expect(judged.dryDays).toBeGreaterThan(20);
    expect(row('method, 6 readings').dry).toBeLessThan(row('method, 0 readings').dry);
  });
});
