import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Issued, type Language, type Plan, papersOf, paperText, plan, type Voice, voice } from '@slabwright/core';
import { describe, expect, test } from 'vitest';
import { GOLDEN_NOW, type GoldenName, goldenJob } from '../bench/src/golden.ts';

/** Regression: REGEN=1 rewrites the expected texts; a changed line is explained in the commit message. */
const REGEN = process.env.REGEN === '1';

const planned = new Map<GoldenName, Plan>();
function planOf(name: GoldenName): Plan {
  const known = planned.get(name) ?? plan(goldenJob(name));
  planned.set(name, known);
  return known;
}

function issuedOf(name: GoldenName, language: Language): readonly Issued[] {
  const { job, catalogue } = goldenJob(name);
  return papersOf(planOf(name), job, catalogue, { language });
}

function voiceOf(name: GoldenName, language: Language, units?: 'metric' | 'imperial'): Voice {
  const made = planOf(name);
  const reader = {
    locale: language === 'es' ? 'es-US' : 'en-US',
    units: units ?? goldenJob(name).job.reader.units,
    ...(made.currency ? { currency: made.currency } : {}),
  };
  return voice(language, reader, made.entries);
}

function textOf(issued: Issued, name: GoldenName): string {
  if (!issued.ok) {
    const said = voiceOf(name, 'en');
    return `not issued\n${issued.why.map((one) => `- ${said.say(one)}`).join('\n')}\n`.replaceAll('\u00a0', ' ');
  }
  return paperText(issued.paper, voiceOf(name, issued.paper.language));
}

const kindOf = (issued: Issued): string => (issued.ok ? issued.paper.kind : issued.kind);

describe.each(Object.keys(GOLDEN_NOW) as GoldenName[])('%s', (name) => {
  test('the papers read as they did (regression)', () => {
    for (const issued of issuedOf(name, 'en')) {
      // The annex repeats the plan's own table, which has its own regression.
      if (kindOf(issued) === 'working-annex') continue;
      const text = textOf(issued, name);
      const file = fileURLToPath(new URL(`./${name}/expected/papers-${kindOf(issued)}.txt`, import.meta.url));
      if (REGEN || !existsSync(file)) writeFileSync(file, text);
      expect(text).toBe(readFileSync(file, 'utf8'));
    }
  });
});
