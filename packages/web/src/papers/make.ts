import regular from '@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf?url';
import bold from '@expo-google-fonts/ibm-plex-sans/700Bold/IBMPlexSans_700Bold.ttf?url';
import { type Catalogue, type Issued, type Job, type Plan, papersOf, type Reader, voice } from '@slabwright/core';
import { type FontFiles, renderPaper } from '@slabwright/pdf';
import type { PaperView } from '../worker/api.ts';

/** Papers of the last plan: which may be issued, and the bytes of one. */

interface Source {
  readonly plan: Plan;
  readonly job: Job;
  readonly catalogue: Catalogue;
  readonly reader: Reader;
}

type Language = 'en' | 'es';

const localeOf = (reader: Reader, language: Language): string =>
  language === 'es' ? reader.locale.replace(/^[a-z]+/, 'es') : reader.locale;

const voiceOf = ({ plan, reader }: Source, language: Language) =>
  voice(language, { ...reader, locale: localeOf(reader, language) }, plan.entries);

const issued = ({ plan, job, catalogue }: Source, optionId: string, language: Language): readonly Issued[] =>
  papersOf(plan, job, catalogue, { language, optionId });

export function paperList(source: Source, optionId: string, language: Language): readonly PaperView[] {
  const english = voiceOf(source, 'en');
  return issued(source, optionId, language).map((one): PaperView => {
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
  source: Source,
  kind: string,
  optionId: string,
  language: Language,
  size: 'letter' | 'a4',
): Promise<Uint8Array> {
  const one = issued(source, optionId, language).find((found) => found.ok && found.paper.kind === kind);
  if (!one?.ok) throw new Error(`the paper ${kind} is not issued for this plan`);
  return renderPaper(one.paper, voiceOf(source, one.paper.language), { size, fonts: await fontFiles() });
}
