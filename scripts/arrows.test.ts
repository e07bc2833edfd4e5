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

const lint = (file: string) => output('npx', ['biome', 'lint', '--vcs-enabled=false', file]);

test.each([
  ['kernel', "export { toSI } from '../../units/convert.ts';\n"],
  ['units', "export { wetFilmFromDry } from '../../science/film/wet-from-dry.ts';\n"],
  ['science', "export { plan } from '../../plan.ts';\n"],
  ['steps', "export { plan } from '../../plan.ts';\n"],
  ['spread', "export { survey } from '../../steps/survey/index.ts';\n"],
])('an import against the arrows in %s is an error', (room, text) => {
  const { status, text: said } = lint(plant(room, text));
  expect(said).toContain('noRestrictedImports');
  expect(status).not.toBe(0);
});

test('a platform module in the core is an error to the linter', () => {
  const { status, text } = lint(
    plant('kernel', "import { readFileSync } from 'node:fs';\nexport const a = readFileSync;\n"),
  );
  expect(text).toContain('noNodejsModules');
  expect(status).not.toBe(0);
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
  const { status, text } = output('npx', ['tsc', '-p', config]);
  expect(text).toMatch(/node:fs/);
  expect(status).not.toBe(0);
});

test('what the rules allow passes', () => {
  const { status } = lint(plant('science', "export { Trace } from '../../kernel/trace.ts';\n"));
  expect(status).toBe(0);
});
