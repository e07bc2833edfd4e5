import { backupCases } from './backups.ts';
import { documentCases } from './documents.ts';
import { faultCases } from './faults.ts';
import { hostileCases } from './hostile.ts';
import { listCases } from './lists.ts';
import { logCases } from './log.ts';
import { type AcceptanceCase, type MakePlace, runCase } from './place.ts';
import { transactionCases } from './transactions.ts';

export { indexedDbPlaces } from './page.ts';
export type { AcceptanceCase, MakePlace, Opening, Place } from './place.ts';

/** Every rule of SPEC.md that can be seen from outside through the port, put to the test. */
export const acceptanceCases: readonly AcceptanceCase[] = [
  ...documentCases,
  ...listCases,
  ...logCases,
  ...transactionCases,
  ...backupCases,
  ...faultCases,
  ...hostileCases,
];

/** The two functions of a test runner the suite uses. */
export interface TestRunner {
  readonly describe: (name: string, body: () => void) => void;
  readonly test: (name: string, body: () => Promise<void>) => void;
}

/** Declares the suite for one adapter. `tellsOthers` says whether rule W4 holds for it. */
export function storeAcceptance(name: string, makePlace: MakePlace, tellsOthers: boolean, runner: TestRunner): void {
  runner.describe(`the store's rules on ${name}`, () => {
    for (const one of casesFor(tellsOthers)) {
      runner.test(`${one.rule}: ${one.title}`, () => runCase(one, makePlace));
    }
  });
}

/** How one case went; `failure` is null when its rule holds. */
export interface AcceptanceResult {
  readonly rule: string;
  readonly title: string;
  readonly failure: string | null;
}

/** Runs the suite without a test runner, for instance in a page, one case after the other. */
export async function runAcceptance(makePlace: MakePlace, tellsOthers: boolean): Promise<readonly AcceptanceResult[]> {
  const results: AcceptanceResult[] = [];
  for (const one of casesFor(tellsOthers)) {
    const { rule, title } = one;
    try {
      await runCase(one, makePlace);
      results.push({ rule, title, failure: null });
    } catch (error) {
      results.push({
        rule,
        title,
        failure: error instanceof Error ? `${error.name}: ${error.message}` : String(error),
      });
    }
  }
  return results;
}

function casesFor(tellsOthers: boolean): readonly AcceptanceCase[] {
  return acceptanceCases.filter((one) => tellsOthers || one.needsTelling !== true);
}
