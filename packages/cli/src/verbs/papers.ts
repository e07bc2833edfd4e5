import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Language, papersOf, voice } from '@slabwright/core';
import { renderPaper } from '@slabwright/pdf';
import { fontsFromNode } from '@slabwright/pdf/node';
import type { FileOptions } from '../load.ts';
import { planned } from '../planned.ts';
import { BadInput, EXIT, type Terminal } from '../terminal.ts';

interface PaperOptions extends FileOptions {
  readonly out: string;
  readonly option?: string;
  readonly units?: 'imperial' | 'metric';
  readonly paper?: 'letter' | 'a4';
  readonly language?: Language;
  readonly json?: boolean;
}

/** `papers JOB --out DIR`: writes each paper that may be issued, says why the others may not. */
export async function papers(path: string, options: PaperOptions, terminal: Terminal): Promise<number> {
  const { plan, job, catalogue, voice: english } = planned(path, options, terminal);
  if (options.option !== undefined && !plan.options.some((o) => o.id === options.option)) {
    throw new BadInput([
      `The job has no option "${options.option}". It has ${plan.options.map((o) => o.id).join(', ')}.`,
    ]);
  }
  const language = options.language ?? 'en';
  const size = options.paper ?? job.reader.paper;
  const issued = papersOf(plan, job, catalogue, { language, ...(options.option ? { optionId: options.option } : {}) });
  try {
    mkdirSync(options.out, { recursive: true });
  } catch (trouble) {
    throw new BadInput([`${options.out} cannot be made a folder: ${(trouble as Error).message}`]);
  }
  const fonts = await fontsFromNode();
  const results: { kind: string; file?: string; why?: readonly string[] }[] = [];
  for (const one of issued) {
    if (!one.ok) {
      results.push({ kind: one.kind, why: one.why.map((said) => english.say(said)) });
      continue;
    }
    const reader = { ...english.reader, locale: one.paper.language === 'es' ? 'es-US' : 'en-US' };
    const bytes = await renderPaper(one.paper, voice(one.paper.language, reader, plan.entries), { size, fonts });
    const file = join(
      options.out,
      `${job.id}-${one.paper.kind}${one.paper.language === 'en' ? '' : `-${one.paper.language}`}.pdf`,
    );
    writeFileSync(file, bytes);
    results.push({ kind: one.paper.kind, file });
  }
  if (options.json) terminal.out(`${JSON.stringify(results, null, 2)}\n`);
  else
    for (const { kind, file, why } of results)
      terminal.out(file ? `${kind}: ${file}\n` : `${kind}: not issued. ${why?.join(' ')}\n`);
  return results.some((r) => r.why) ? EXIT.halted : EXIT.fine;
}
