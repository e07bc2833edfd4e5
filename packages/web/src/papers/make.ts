import regular from '@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf?url';
import bold from '@expo-google-fonts/ibm-plex-sans/700Bold/IBMPlexSans_700Bold.ttf?url';
import { type Issued, papersOf, type Reader, voice } from '@slabwright/core';
import { type FontFiles, renderPaper } from '@slabwright/pdf';
import type { Language, PaperSize, PaperView } from './api.ts';
import type { PaperSource } from './desk.ts';

/** Papers of the last plan with pours: which may be issued, and the bytes of one. */

const localeOf = (reader: Reader, language: Language): string =>
  language === 'es' ? reader.locale.replace(/^[a-z]+/, 'es') : reader.locale;

const voiceOf = ({ plan, reader }: PaperSource, language: Language) =>
  voice(language, { ...reader, locale: localeOf(reader, language), year: plan.now.slice(0, 4) }, plan.entries);

const issued = ({ plan, job, catalogue, option }: PaperSource, language: Language): readonly Issued[] =>
  papersOf(plan, job, catalogue, { language, optionId: option });

export function paperList(source: PaperSource, language: Language): readonly PaperView[] {
  const english = voiceOf(source, 'en');
  return issued(source, language).map((one): PaperView => {
    if (!one.ok) return { kind: one.kind, title: '', ok: false, why: one.why.map((said) => english.say(said)) };
    const speaks = voiceOf(source, one.paper.language);
    return { kind: one.paper.kind, title: speaks.say(one.paper.title), ok: true, why: [] };
  });
}

let fonts: Promise<FontFiles> | null = null;

async function bytesOf(address: string): Promise<Uint8Array> {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`the font ${address} was not found (${answer.status})`);
  return new Uint8Array(await answer.arrayBuffer());
}

function fontFiles(): Promise<FontFiles> {
  fonts ??= Promise.all([bytesOf(regular), bytesOf(bold)]).then(
    ([thin, thick]) => ({ regular: thin, bold: thick }),
    (trouble: unknown) => {
      // The next press tries again.
      fonts = null;
      throw trouble;
    },
  );
  return fonts;
}

export async function paperPdf(
  source: PaperSource,
  kind: string,
  language: Language,
  size: PaperSize,
): Promise<Uint8Array> {
  const one = issued(source, language).find((found) => found.ok && found.paper.kind === kind);
  if (!one?.ok) throw new Error(`the paper ${kind} is not issued for this plan`);
  return renderPaper(one.paper, voiceOf(source, one.paper.language), { size, fonts: await fontFiles() });
}
