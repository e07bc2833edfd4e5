import { execFileSync } from 'node:child_process';
import {
  accessSync,
  chmodSync,
  constants,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { brotliDecompressSync } from 'node:zlib';

/** A browser on this machine, and what it needs around it. */
export interface FoundBrowser {
  readonly path: string;
  readonly env: Readonly<Record<string, string>>;
}

/** Each page starts from nothing, and the browser talks to nobody but the servers under test. */
export const BROWSER_FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
] as const;

const SYSTEM_NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
const SYSTEM_PLACES = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

const NO_BROWSER =
  'No browser was found for the browser tests: install Chromium or Chrome, or name one in SLABWRIGHT_BROWSER.';

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function systemBrowser(): string | undefined {
  const folders = (process.env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  const inPath = SYSTEM_NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
  return [...inPath, ...SYSTEM_PLACES].find(isProgram);
}

/**
 * Finds a browser: the one named in SLABWRIGHT_BROWSER (`packed` asks for the last kind below), the system's, or on
 * Linux x64 the one that came packed with the development dependencies.
 *
 * @throws one sentence when there is none.
 */
export function findBrowser(): FoundBrowser {
  const named = process.env.SLABWRIGHT_BROWSER;
  if (named !== undefined && named !== '' && named !== 'packed') {
    if (!isProgram(named)) throw new Error(`SLABWRIGHT_BROWSER is ${named}; there is no program of that name.`);
    return { path: named, env: {} };
  }
  const system = named === 'packed' ? undefined : systemBrowser();
  if (system !== undefined) return { path: system, env: {} };
  if (process.platform === 'linux' && process.arch === 'x64') return unpackedBrowser();
  throw new Error(NO_BROWSER);
}

/** Unpacks browser, libraries and fonts once a version; half a folder is never taken for a whole one. */
function unpackedBrowser(): FoundBrowser {
  const packed = packedFolder();
  const { version } = JSON.parse(readFileSync(join(packed, 'package.json'), 'utf8')) as { version: string };
  const place = join(tmpdir(), `slabwright-browser-${version}`);
  if (!existsSync(place)) {
    const making = `${place}-${process.pid}`;
    mkdirSync(making, { recursive: true });
    const unpacked = (name: string): Buffer => brotliDecompressSync(readFileSync(join(packed, 'bin', name)));
    writeFileSync(join(making, 'chromium'), unpacked('chromium.br'));
    chmodSync(join(making, 'chromium'), 0o755);
    for (const archive of ['al2023.tar.br', 'fonts.tar.br', 'swiftshader.tar.br']) {
      execFileSync('tar', ['-x', '-C', making], { input: unpacked(archive) });
    }
    renameSync(making, place);
  }
  const libraries = [join(place, 'lib'), process.env.LD_LIBRARY_PATH].filter((one) => one !== undefined && one !== '');
  return {
    path: join(place, 'chromium'),
    env: { LD_LIBRARY_PATH: libraries.join(':'), FONTCONFIG_PATH: join(place, 'fonts') },
  };
}

function packedFolder(): string {
  try {
    // The package shows its entry only; its archives lie two folders above that.
    return dirname(dirname(dirname(createRequire(import.meta.url).resolve('@sparticuz/chromium'))));
  } catch (cause) {
    throw new Error(NO_BROWSER, { cause });
  }
}
