import { basename } from 'node:path';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Files that take long though they are short; the rest goes by size. */
const LONG = ['handing-on', 'spread', 'rules-desk', 'rules-phone', 'whole-way', 'room', 'keeping'];

const rank = ({ moduleId }: TestSpecification): number => {
  const at = LONG.indexOf(basename(moduleId, '.e2e.ts'));
  return at < 0 ? LONG.length : at;
};

/** A clean clone knows no times yet; a long file begun last would leave a core waiting at the end. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return (await super.sort(files)).toSorted((a, b) => rank(a) - rank(b));
  }
}
