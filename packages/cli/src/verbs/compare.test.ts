import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { runHeard } from '../testing/run-heard.ts';

const GARAGE = fileURLToPath(new URL('../../../../jobs/garage/catalogue.json', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'slabwright-compare-'));
afterAll(() => rmSync(folder, { recursive: true }));

async function slabwright(...args: string[]) {
  const { status, out, err } = await runHeard(['compare', ...args], 110);
  return { status, out: out.replaceAll('\u00a0', ' '), flat: out.replace(/\s+/g, ' '), err };
}

/** The garage catalogue with its products changed, in a file of its own. */
function changed(change: (products: Record<string, unknown>[]) => void): string {
  const catalogue = JSON.parse(readFileSync(GARAGE, 'utf8'));
  change(catalogue.products);
  const file = join(folder, 'catalogue.json');
  writeFileSync(file, JSON.stringify(catalogue));
  return file;
}

describe('compare', () => {
  test('three sheets: all three verdicts, the reason in words, flags, what to ask', async () => {
    const { status, out, flat } = await slabwright('base-b', 'Clear C', 'clear-d', '--catalogue', GARAGE);
    expect(status).toBe(0);
    const line = (start: string) => out.split('\n').find((one) => one.startsWith(start)) ?? '';
    expect(line('tensile strength')).toMatch(/\[2,600 psi\] +7,100 psi +6,400 psi/);
    expect(out).toMatch(/more is better +other test: ASTM D412 +ASTM D638 +ASTM D638/);
    expect(line('wear')).toMatch(/— +25 mm³ +16\.1 mm³/);
    expect(out).toContain('tensile strength: Clear D lies 700 psi below Clear C (more is better).');
    expect(flat).toContain('each device has its own threshold');
    expect(flat).toContain('is a promise, not a test');
    expect(out).toMatch(/Ask the maker\n/);
    expect(flat).toContain('what failed, by letter');
    expect(out).not.toMatch(/\{|undefined|NaN/);
    expect(Math.max(...out.split('\n').map((one) => one.length))).toBeLessThanOrEqual(110);
  });
  test('metric readers get metric values and the same verdicts', async () => {
    const { out } = await slabwright('clear-c', 'clear-d', '--catalogue', GARAGE, '--units', 'metric');
    expect(out).toMatch(/49 MPa +44\.1 MPa/);
    expect(out).toContain('Clear D lies 4.83 MPa below Clear C');
  });
  test('--json gives the table with every number among the entries', async () => {
    const { status, out } = await slabwright('clear-c', 'clear-d', '--catalogue', GARAGE, '--json');
    expect(status).toBe(0);
    const table = JSON.parse(out);
    const wear = table.rows.find((row: { family: { id: string } }) => row.family.id === 'wear');
    const [pair] = wear.pairs;
    expect(pair).toMatchObject({ verdict: 'comparable', outcome: 'lower' });
    expect(table.entries[pair.difference.id].formula).toBe('evidence/difference-of-wear');
  });
  test('the order of the sheets changes no verdict', async () => {
    const verdicts = async (...names: string[]) => {
      const { out } = await slabwright(...names, '--catalogue', GARAGE, '--json');
      return JSON.parse(out).rows.map((row: { family: { id: string }; pairs: { verdict: string }[] }) =>
        [row.family.id, ...row.pairs.map(({ verdict }) => verdict)].join(),
      );
    };
    expect(await verdicts('clear-d', 'clear-c')).toEqual(await verdicts('clear-c', 'clear-d'));
  });
  test('sheets that state nothing say so', async () => {
    const file = changed((products) => {
      for (const product of products) delete product.properties;
    });
    const { status, out } = await slabwright('base-b', 'clear-c', '--catalogue', file);
    expect(status).toBe(0);
    expect(out).toContain('None of these sheets states a property.');
    expect(out).toContain('Base B: the sheet in the catalogue states no property at all.');
  });
});

describe('bad input: what, where and a way out, exit status 2', () => {
  test.each([
    [['base-c', 'clear-d'], /holds no product "base-c"\. Did you mean base-b/],
    [['base-b'], /One product cannot be compared with itself\. Name another/],
    [['base-b', 'Base B'], /base-b is named twice/],
  ])('%j', async (names, says) => {
    const { status, err } = await slabwright(...names, '--catalogue', GARAGE);
    expect(err).toMatch(says);
    expect(status).toBe(2);
  });
  test('no catalogue', async () => {
    const { status, err } = await slabwright('base-b', 'clear-d', '--catalogue', join(folder, 'none.json'));
    expect(err).toMatch(/no such file/);
    expect(status).toBe(2);
  });
  test('a claim in the unit of another property', async () => {
    const file = changed(([product]) => {
      if (product) product.properties = [{ what: 'tensile strength', method: 'ASTM D638', value: '40 mg' }];
    });
    const { status, err } = await slabwright('base-b', 'clear-d', '--catalogue', file);
    expect(err).toMatch(
      /products\[0\]\.properties\[0\]\.value is "40 mg": that unit does not measure tensile strength/,
    );
    expect(status).toBe(2);
  });
  test('a condition nobody knows', async () => {
    const file = changed(([product]) => {
      if (product)
        product.properties = [{ what: 'wear', method: 'ASTM D4060', value: '40 mg', conditions: { wheels: 'CS-17' } }];
    });
    const { status, err } = await slabwright('base-b', 'clear-d', '--catalogue', file);
    expect(err).toMatch(/wheels/);
    expect(status).toBe(2);
  });
});
