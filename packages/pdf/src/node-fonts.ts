import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { FontFiles } from './fonts.ts';

const FOLDER = '@expo-google-fonts/ibm-plex-sans';

/** The face of the papers out of its npm package, read from disk once. @throws Error when the package is missing. */
export async function fontsFromNode(): Promise<FontFiles> {
  const resolve = createRequire(import.meta.url).resolve;
  const [regular, bold] = await Promise.all([
    readFile(resolve(`${FOLDER}/400Regular/IBMPlexSans_400Regular.ttf`)),
    readFile(resolve(`${FOLDER}/700Bold/IBMPlexSans_700Bold.ttf`)),
  ]);
  return { regular: new Uint8Array(regular), bold: new Uint8Array(bold) };
}
