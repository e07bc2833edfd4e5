/**
 * Pictures of every screen at 390 and 1280 pixels, on both grounds, as a visitor sees them: builds the app, serves it
 * from a folder of its own, opens the examples and writes docs/screens/*.png and docs/screens.md.
 *
 *   node scripts/screen-pictures.mjs [screen…]
 *
 * Needs Chromium or Chrome (or SLABWRIGHT_BROWSER). Colours are cut to a palette by ImageMagick when it is there.
 */
import { execFileSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { extname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { build } from 'vite';

const root = fileURLToPath(new URL('..', import.meta.url));
const out = join(root, 'docs', 'screens');
const COLOURS = 64;

const SIZES = [
  { name: 'desk', width: 1280, height: 900 },
  { name: 'phone', width: 390, height: 844 },
];
const GROUNDS = ['sun', 'night'];

/** Each screen: its address, what must be there before the picture, and what it shows. */
const SCREENS = [
  {
    name: 'jobs',
    at: '/',
    ready: '.jobs li a',
    alt: 'The list of jobs with a search, the catalogues, and where the data is kept',
  },
  {
    name: 'survey',
    at: '/job/example-garage/survey',
    ready: '#facts table',
    alt: 'Survey: the floor to scale with readings, joints, a crack and oil; moisture and pull-off against their limits',
  },
  {
    name: 'draw',
    at: '/job/example-garage/survey/enter/floor',
    ready: '.entering .corners, .entering table, .walk',
    alt: 'Drawing the floor: corners on the drawing and in a table, walls by typed lengths',
  },
  {
    name: 'preparation',
    at: '/job/example-garage/preparation',
    ready: '#facts table',
    alt: 'Preparation: passes and hours of each task',
  },
  {
    name: 'system',
    at: '/job/example-garage/system',
    ready: '#facts table',
    alt: 'System: a cut through the floor with the weakest known link marked',
  },
  {
    name: 'quantities',
    at: '/job/example-garage/quantities',
    ready: '.buying',
    alt: 'Quantities: whole kits to buy, what is needed and what is left over',
  },
  {
    name: 'working',
    at: '/job/example-garage/quantities',
    ready: '.buying',
    press: '#facts table a',
    opens: '.working .wb',
    alt: 'The working of a number: equation with its figures, inputs, source, valid range and outside check',
  },
  {
    name: 'hours',
    at: '/job/example-garage/hours',
    ready: '#facts table',
    alt: 'Hours: each coat against dew point, slab warming and the hours promised; below, the day as a ribbon',
  },
  {
    name: 'spread',
    at: '/job/example-garage/spread',
    ready: '.spread table',
    alt: 'Spread: numbered pours with their arrows and seams, and the day to play',
  },
  {
    name: 'price',
    at: '/job/example-garage/price',
    ready: '.prices',
    alt: 'Price: material, labour and other costs, overhead and profit',
  },
  {
    name: 'papers',
    at: '/job/example-garage/papers',
    ready: 'ul.papers li',
    alt: 'Papers: proposal, crew sheet, buying list, safety sheet and working annex, made on the device',
  },
  {
    name: 'workshop',
    at: '/job/example-workshop/hours',
    ready: '#facts table',
    alt: 'A workshop of 593 m²: four coats over five days, four hands',
  },
  {
    name: 'workshop-spread',
    at: '/job/example-workshop/spread',
    ready: '.spread table',
    alt: 'Pours of the workshop round its columns',
  },
  {
    name: 'weather',
    at: '/job/example-garage/hours/enter/weather',
    ready: '.entering .group',
    alt: 'Giving weather: a file, five numbers, or a forecast service once it is allowed',
  },
  {
    name: 'catalogue',
    at: '/catalogue/example-garage',
    ready: '.list',
    alt: 'The catalogue: products entered from their data sheets',
  },
  {
    name: 'goods',
    at: '/job/example-garage/system/enter/goods',
    ready: '.entering select',
    alt: 'Choosing or making a catalogue and a price book',
  },
];

const TYPES = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ttf': 'font/ttf',
  '.webmanifest': 'application/manifest+json',
};

/** A plain static server of one folder, for this run only. */
function serve(folder) {
  const server = createServer((request, answer) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://here').pathname));
    const file = join(folder, path === '/' ? 'index.html' : path);
    if (!file.startsWith(folder) || !existsSync(file) || !statSync(file).isFile()) {
      answer.writeHead(404).end();
      return;
    }
    answer.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'application/octet-stream' });
    answer.end(readFileSync(file));
  });
  return new Promise((ready) => server.listen(0, '127.0.0.1', () => ready(server)));
}

function browserPath() {
  const named = process.env.SLABWRIGHT_BROWSER;
  const found = [named, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find(
    (path) => path && existsSync(path),
  );
  if (!found) throw new Error('No browser was found: install Chromium or Chrome, or name one in SLABWRIGHT_BROWSER.');
  return found;
}

/** Fewer colours, a third of the size; a picture is kept as it is where the tool is missing. */
function lessColours(file) {
  try {
    execFileSync('convert', [file, '+dither', '-colors', String(COLOURS), '-strip', `png8:${file}`]);
  } catch (trouble) {
    console.warn(`${file} keeps all its colours: ${trouble.message}`);
  }
}

async function picture(page, screen, file) {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, screen.at);
  await page.locator(`main:not(.stale) ${screen.ready}`).first().waitFor({ timeout: 120_000 });
  if (screen.press) {
    await page.locator(screen.press).first().click();
    await page.locator(screen.opens).first().waitFor();
  }
  await page.evaluate(() => document.fonts.ready);
  await page.waitForTimeout(700);
  await page.screenshot({ path: file });
  lessColours(file);
}

const fileOf = (screen, size, ground) => `${screen.name}-${size.width}-${ground}.png`;

function page() {
  const lines = [
    '# The screens',
    '',
    'Made by `node scripts/screen-pictures.mjs` from the examples that come with the program: invented people, invented products.',
    'Each at 1280 and at 390 pixels, on the light ground for the sun and on the dark one for the night.',
    '',
  ];
  for (const screen of SCREENS) {
    lines.push(`## ${screen.alt}`, '');
    for (const size of SIZES) {
      const wide = size.name === 'desk' ? 420 : 200;
      const said = (ground) => `${screen.alt}; ${size.name}, ${ground} ground`;
      const pictures = GROUNDS.map(
        (ground) => `<img src="screens/${fileOf(screen, size, ground)}" width="${wide}" alt="${said(ground)}">`,
      );
      lines.push(pictures.join(' '), '');
    }
  }
  return `${lines.join('\n').trimEnd()}\n`;
}

const only = process.argv.slice(2);
const wanted = SCREENS.filter(({ name }) => only.length === 0 || only.includes(name));
const place = mkdtempSync(join(tmpdir(), 'slabwright-screens-'));
process.env.NODE_ENV = 'production';
const web = join(root, 'packages', 'web');
await build({
  root: web,
  configFile: join(web, 'vite.config.ts'),
  mode: 'production',
  logLevel: 'error',
  build: { outDir: join(place, 'web') },
});
const server = await serve(join(place, 'web'));
const address = `http://127.0.0.1:${server.address().port}/`;
const browser = await chromium.launch({ executablePath: browserPath(), args: ['--no-sandbox', '--disable-gpu'] });
mkdirSync(out, { recursive: true });
try {
  for (const size of SIZES) {
    for (const ground of GROUNDS) {
      const phone = size.name === 'phone';
      const context = await browser.newContext({
        viewport: { width: size.width, height: size.height },
        locale: 'en-US',
        hasTouch: phone,
        isMobile: phone,
        reducedMotion: 'reduce',
      });
      await context.addInitScript((theme) => {
        localStorage.setItem('slabwright.preferences', JSON.stringify({ theme }));
      }, ground);
      const tab = await context.newPage();
      await tab.goto(address);
      for (const screen of wanted) {
        await picture(tab, screen, join(out, fileOf(screen, size, ground)));
        console.log(fileOf(screen, size, ground));
      }
      await context.close();
    }
  }
} finally {
  await browser.close();
  server.close();
  rmSync(place, { recursive: true });
}
writeFileSync(join(root, 'docs', 'screens.md'), page());
const bytes = readdirSync(out).reduce((sum, name) => sum + statSync(join(out, name)).size, 0);
console.log(`docs/screens: ${readdirSync(out).length} pictures, ${Math.round(bytes / 1024)} kB`);
