import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';

/**
 * The arrows between the rooms are kept by lint rules and by the compiler. A rule nobody sees fail may be off, so
 * these tests plant a forbidden import and expect each guard to notice.
 */
const root = new URL('..', import.meta.url).pathname;
const planted: string[] = [];

afterEach(() => {
  for (const path of planted.splice(0)) rmSync(path, { recursive: true, force: true });
});

function plant(room: string, text: string): string {
  const folder = mkdtempSync(join(root, 'packages/core/src', room, 'planted-'));
  planted.push(folder);
  const file = join(folder, 'planted.ts');
  writeFileSync(file, text);
  return file;
}

function output(command: string, args: readonly string[]): { status: number; text: string } {
  try {
    return { status: 0, text: execFileSync(command, [...args], { cwd: root, encoding: 'utf8', stdio: 'pipe' }) };
  } catch (failure) {
    const { status, stdout, stderr } = failure as { status: number; stdout: string; stderr: string };
    return { status, text: `${stdout}${stderr}` };
  }
}

const PLATFORM = "import { readFileSync } from 'node:fs';\nexport const a = readFileSync;\n";

const PLANTED: readonly (readonly [room: string, text: string, rule: string | null])[] = [
  ['kernel', "export { toSI } from '../../units/convert.ts';\n", 'noRestrictedImports'],
  ['units', "export { wetFilmFromDry } from '../../science/film/wet-from-dry.ts';\n", 'noRestrictedImports'],
  ['science', "export { plan } from '../../plan.ts';\n", 'noRestrictedImports'],
  ['steps', "export { plan } from '../../plan.ts';\n", 'noRestrictedImports'],
  ['spread', "export { survey } from '../../steps/survey/index.ts';\n", 'noRestrictedImports'],
  ['kernel', PLATFORM, 'noNodejsModules'],
  ['science', "export { Trace } from '../../kernel/trace.ts';\n", null],
];

test('the linter stops an import against the arrows and a platform module in the core, and lets the rest pass', () => {
  const files = PLANTED.map(([room, text]) => plant(room, text));
  // One run for all: starting the linter and reading the tree is what costs.
  const { status, text } = output(join(root, 'node_modules/.bin/biome'), [
    'lint',
    '--vcs-enabled=false',
    '--reporter=json',
    ...files,
  ]);
  expect(status).not.toBe(0);
  const said = JSON.parse(text.slice(text.indexOf('{'), text.lastIndexOf('}') + 1)) as {
    diagnostics: readonly { category: string; location: { path: string | { file: string } } }[];
  };
  const rulesOf = (file: string) =>
    said.diagnostics
      .filter(({ location }) => JSON.stringify(location.path).includes(file.slice(root.length)))
      .map(({ category }) => category.split('/').at(-1));
  for (const [at, [room, planted, rule]] of PLANTED.entries()) {
    expect([room, planted, rulesOf(files[at] ?? '')]).toEqual([room, planted, rule === null ? [] : [rule]]);
  }
});

test('a platform module in the core does not compile', () => {
  const file = plant('kernel', "import { readFileSync } from 'node:fs';\nexport const a = readFileSync;\n");
  const config = join(file, '../tsconfig.json');
  writeFileSync(
    config,
    JSON.stringify({
      extends: '../../../../../tsconfig.base.json',
      compilerOptions: { noEmit: true },
      files: ['planted.ts'],
    }),
  );
  const { status, text } = output(join(root, 'node_modules/.bin/tsc'), ['-p', config]);
  expect(text).toMatch(/node:fs/);
  expect(status).not.toBe(0);
});
