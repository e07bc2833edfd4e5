import {
  catalogueFromText,
  checkCatalogue,
  checkJob,
  type Issue,
  type JobFile,
  jobFromText,
  priceBookFromText,
  type Result,
  readJson,
  WARNINGS,
  weatherFromText,
} from '@slabwright/core';
import {
  catalogueWords,
  type HeadingWords,
  type JobDocument,
  jobWords,
  priceBookWords,
  weatherWords,
} from '@slabwright/server';
import type { Change, Json, Store } from '@slabwright/store';
import { documentsOf } from '../data/find-job.ts';
import { type DataOptions, withData } from '../data/open-data.ts';
import { badInput, readBeside, readInput } from '../read-file.ts';
import { BadInput, EXIT, type Terminal } from '../terminal.ts';

interface FileIn {
  readonly kind: 'job' | 'catalogue' | 'price-book' | 'weather';
  readonly id: string;
  readonly words: HeadingWords;
  readonly body: unknown;
}

type Stored = { readonly id: string; readonly text: string };
type Text = { readonly file: string; readonly text: string };

function good<T>(file: string, result: Result<T>): T {
  if (!result.ok) throw badInput(file, result.issues);
  return result.value;
}

const refuse = (file: string, issues: readonly Issue[]): void => {
  if (issues.length > 0) throw badInput(file, issues);
};

/** What was typed is what is stored: the checked value only says that it reads. */
const typed = <T>({ file, text }: Text): T => good(file, readJson(text)) as T;

function catalogueIn(at: Text): FileIn {
  refuse(at.file, checkCatalogue(good(at.file, catalogueFromText(at.text))));
  const body = typed<Parameters<typeof catalogueWords>[0]>(at);
  return { kind: 'catalogue', id: body.id, words: catalogueWords(body), body };
}

function priceBookIn(at: Text): FileIn {
  good(at.file, priceBookFromText(at.text));
  const body = typed<Parameters<typeof priceBookWords>[0]>(at);
  return { kind: 'price-book', id: body.id, words: priceBookWords(body), body };
}

/** Weather has no id of its own: it is kept as the weather of its job. */
function weatherIn(at: Text, id: string): FileIn {
  good(at.file, weatherFromText(at.text));
  const body = typed<Parameters<typeof weatherWords>[0]>(at);
  return { kind: 'weather', id, words: weatherWords(body), body };
}

/** The catalogue the job was planned with here before, else one that holds every system it names. */
async function catalogueFor(store: Store, file: string, job: JobFile, before: string | undefined): Promise<Stored> {
  const known = before === undefined ? null : await store.get('catalogue', before);
  if (known !== null && !known.removed) return { id: known.id, text: JSON.stringify(known.body) };
  const wanted = job.options.map(({ system }) => system);
  for (const { id, body } of await documentsOf(store, 'catalogue')) {
    const { systems } = body as unknown as { readonly systems: readonly { readonly id: string }[] };
    if (wanted.every((system) => systems.some((one) => one.id === system))) return { id, text: JSON.stringify(body) };
  }
  throw new BadInput([
    `${file}: no catalogue here holds the systems ${wanted.join(', ')}. Import one first, or put catalogue.json beside the job.`,
  ]);
}

async function jobFiles(store: Store, at: Text, folder: string, now: string): Promise<readonly FileIn[]> {
  const checked = good(at.file, jobFromText(at.text));
  const job = typed<JobFile>(at);
  const known = await store.get('job', job.id);
  const before = known === null ? undefined : (known.body as unknown as JobDocument);
  const beside = readBeside(folder, 'catalogue.json', undefined);
  const catalogue = beside ? catalogueIn(beside) : null;
  const stored = catalogue ? null : await catalogueFor(store, at.file, job, before?.catalogue);
  const text = beside?.text ?? stored?.text ?? '';
  const found = checkJob(checked, good(beside?.file ?? 'the stored catalogue', catalogueFromText(text)), now);
  refuse(
    at.file,
    found.filter(({ code }) => !WARNINGS.has(code)),
  );
  const prices = readBeside(folder, 'price-book.json', undefined);
  const priceBook = prices ? priceBookIn(prices) : null;
  const priceBookId = priceBook?.id ?? before?.priceBook;
  const hours = readBeside(folder, 'weather.json', undefined);
  const weather = hours ? weatherIn(hours, job.id) : null;
  const document: JobDocument = {
    ...before,
    job,
    catalogue: catalogue?.id ?? stored?.id ?? '',
    ...(priceBookId === undefined ? {} : { priceBook: priceBookId }),
    ...(weather ? { weather: weather.id } : {}),
  };
  return [
    ...(catalogue ? [catalogue] : []),
    ...(priceBook ? [priceBook] : []),
    ...(weather ? [weather] : []),
    { kind: 'job', id: job.id, words: jobWords(document), body: document },
  ];
}

async function filesIn(store: Store, at: Text, folder: string, now: string): Promise<readonly FileIn[]> {
  const value = good(at.file, readJson(at.text));
  const schema = value !== null && typeof value === 'object' ? (value as { schema?: unknown }).schema : undefined;
  const kind = typeof schema === 'string' ? schema.split('/')[0] : undefined;
  if (kind === 'slabwright.catalogue') return [catalogueIn(at)];
  if (kind === 'slabwright.price-book') return [priceBookIn(at)];
  if (kind === 'slabwright.backup') {
    throw new BadInput([`${at.file} is a backup of everything: \`restore ${at.file}\` takes it in.`]);
  }
  // Anything else is read as a job, whose reader says what is wrong with it.
  return jobFiles(store, at, folder, now);
}

/** The change that stores a file, or null when the same is stored already. */
async function changeFor(store: Store, { kind, id, words, body }: FileIn, updatedAt: string): Promise<Change | null> {
  const known = await store.get(kind, id);
  if (known !== null && !known.removed && JSON.stringify(known.body) === JSON.stringify(body)) return null;
  return { do: 'put', draft: { kind, id, updatedAt, ...words, body: body as Json }, expected: known?.revision ?? 0 };
}

/**
 * `import FILE`: takes a job (with the catalogue, price book and weather beside it), a catalogue or a price book into the data
 * folder. What was stored under the same id stays in its history.
 */
export async function importVerb(path: string, options: DataOptions, terminal: Terminal): Promise<number> {
  const { text, folder } = readInput(path, 'job.json');
  good(path, readJson(text));
  const now = new Date(terminal.now()).toISOString();
  const done = await withData(options, 'is made', async (store) => {
    const files = await filesIn(store, { file: path, text }, folder, terminal.now());
    const changes = await Promise.all(files.map((file) => changeFor(store, file, now)));
    await store.transaction(changes.filter((change) => change !== null));
    return files.map(({ kind, id }, index) => ({ kind, id, stored: changes[index] !== null }));
  });
  if (options.json) terminal.out(`${JSON.stringify(done)}\n`);
  else
    for (const { kind, id, stored } of done)
      terminal.out(stored ? `${kind} ${id} is stored.\n` : `${kind} ${id} is here already, just so.\n`);
  return EXIT.fine;
}
