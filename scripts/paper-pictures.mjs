// Renders the papers of the garage as PDF and their pages as pictures: first pages into docs/papers, to be looked at.
// Needs a build (npm run build) and pdftoppm; without it the PDFs are written and it says so.
//
//   node scripts/paper-pictures.mjs [--job garage] [--units imperial|metric] [--language en|es] [--size letter|a4] [--all DIR]

import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';

const root = fileURLToPath(new URL('..', import.meta.url));
const core = await import(new URL('../packages/core/dist/index.js', import.meta.url).href);
const { renderPaper } = await import(new URL('../packages/pdf/dist/index.js', import.meta.url).href);
const { fontsFromNode } = await import(new URL('../packages/pdf/dist/node-fonts.js', import.meta.url).href);

const { values } = parseArgs({
  options: {
    job: { type: 'string', default: 'garage' },
    units: { type: 'string' },
    language: { type: 'string', default: 'en' },
    size: { type: 'string', default: 'letter' },
    all: { type: 'string' },
  },
});
const { job: name, language, size } = values;
const MOST_BYTES = 200_000;
/** The moment the pictures are made for: the day before the garage is coated. */
const NOW = '2026-05-12T18:00:00-06:00';

const given = (answer, file) => {
  if (!answer.ok) throw new Error(`${file}: ${answer.issues.map((issue) => issue.code).join(', ')}`);
  return answer.value;
};
const read = (file) => readFileSync(join(root, 'jobs', name, file), 'utf8');
const job = given(core.jobFromText(read('job.json')), 'job.json');
const catalogue = given(core.catalogueFromText(read('catalogue.json')), 'catalogue.json');
const priceBook = given(core.priceBookFromText(read('price-book.json')), 'price-book.json');
const weather = existsSync(join(root, 'jobs', name, 'weather.json'))
  ? { weather: given(core.weatherFromText(read('weather.json')), 'weather.json') }
  : {};
const made = core.plan({ job, catalogue, priceBook, ...weather, now: NOW, spread: 'quick' });
/** The page a picture shows, where it is not the first: the front that hangs beside the mixing place. */
const SHOWN = { 'crew-sheet': '3' };
const fonts = await fontsFromNode();
const out = values.all ?? join(root, 'docs', 'papers');
mkdirSync(out, { recursive: true });
const work = mkdtempSync(join(tmpdir(), 'papers-'));
const pictures = spawnSync('pdftoppm', ['-v']).error === undefined;
if (!pictures) console.error('pdftoppm is not installed: PDFs are written, no pictures.');

for (const issued of core.papersOf(made, job, catalogue, { language })) {
  if (!issued.ok) {
    console.log(`${issued.kind}: not issued`);
    continue;
  }
  const { paper } = issued;
  const voice = core.voice(
    paper.language,
    {
      locale: paper.language === 'es' ? 'es-US' : 'en-US',
      units: values.units ?? job.reader.units,
      ...(made.currency ? { currency: made.currency } : {}),
      year: made.now.slice(0, 4),
    },
    made.entries,
  );
  const start = performance.now();
  const bytes = await renderPaper(paper, voice, { size, fonts });
  const took = Math.round(performance.now() - start);
  const pdf = join(pictures && !values.all ? work : out, `${paper.kind}.pdf`);
  writeFileSync(pdf, bytes);
  console.log(`${paper.kind}: ${paper.blocks.length} blocks, ${bytes.length} bytes, ${took} ms`);
  if (!pictures) continue;
  const page = SHOWN[paper.kind] ?? '1';
  const pages = values.all ? [] : ['-f', page, '-l', page, '-singlefile'];
  const target = join(out, paper.kind);
  for (const resolution of [80, 64, 48]) {
    const made = spawnSync('pdftoppm', ['-r', String(resolution), '-png', '-gray', ...pages, pdf, target]);
    if (made.status !== 0) throw new Error(`pdftoppm: ${made.stderr}`);
    if (values.all || statSync(`${target}.png`).size <= MOST_BYTES) break;
  }
}
