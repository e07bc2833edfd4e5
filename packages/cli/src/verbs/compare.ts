import {
  type Catalogue,
  catalogueFromText,
  checkCatalogue,
  compareProducts,
  type Entry,
  Ledger,
  type Product,
  type Reader,
  Trace,
  type Voice,
  voice,
} from '@slabwright/core';
import { nearest } from '../nearest.ts';
import { printComparison } from '../print/comparison.ts';
import { badInput, readInput } from '../read-file.ts';
import { BadInput, EXIT, type Terminal } from '../terminal.ts';

interface CompareOptions {
  readonly catalogue?: string;
  readonly json?: boolean;
  readonly units?: 'imperial' | 'metric';
}

/** `compare PRODUCT...`: data sheets side by side, like for like. Exit status 0, or 2 for bad input. */
export function compare(products: readonly string[], options: CompareOptions, terminal: Terminal): number {
  const file = options.catalogue ?? 'catalogue.json';
  const catalogue = readCatalogue(file);
  const chosen = products.map((typed) => chosenProduct(typed, catalogue, file));
  const twice = chosen.find((product, i) => chosen.indexOf(product) !== i);
  if (twice) throw new BadInput([`${twice.id} is named twice: each product stands once beside the others.`]);
  if (chosen.length < 2) {
    const others = catalogue.products.map(({ id }) => id).filter((id) => id !== chosen[0]?.id);
    throw new BadInput([`One product cannot be compared with itself. Name another of ${file}: ${others.join(', ')}.`]);
  }
  const ledger = new Ledger();
  const table = compareProducts(chosen, new Trace(ledger));
  const entries: Readonly<Record<string, Entry>> = Object.fromEntries(ledger.entries);
  const reader: Reader = { locale: 'en-US', units: options.units ?? 'imperial' };
  const speaker: Voice = voice('en', reader, entries);
  terminal.out(
    options.json ? `${JSON.stringify({ ...table, entries }, null, 2)}\n` : printComparison(table, speaker, terminal),
  );
  return EXIT.fine;
}

function readCatalogue(file: string): Catalogue {
  const { text } = readInput(file, 'catalogue.json');
  const read = catalogueFromText(text);
  if (!read.ok) throw badInput(file, read.issues);
  const issues = checkCatalogue(read.value);
  if (issues.length > 0) throw badInput(file, issues);
  return read.value;
}

/** By id or by name, whichever was typed. */
function chosenProduct(typed: string, { products }: Catalogue, file: string): Product {
  const found = products.find(({ id, name }) => id === typed || name.toLowerCase() === typed.toLowerCase());
  if (found) return found;
  const ids = products.map(({ id }) => id);
  const close = nearest(typed, ids);
  throw new BadInput([
    `${file} holds no product "${typed}".${close.length ? ` Did you mean ${close.join(', ')}?` : ''} It holds: ${ids.join(', ')}.`,
  ]);
}
