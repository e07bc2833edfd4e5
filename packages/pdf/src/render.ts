import { type Block, epochOf, type Paper, type Voice } from '@slabwright/core';
import PDFDocument from 'pdfkit';
import { partsOf } from './blocks.ts';
import { type Box, pagesOf } from './box.ts';
import { type FontFiles, rememberWidths, type Weight, widthsOf } from './fonts.ts';
import { overrideBand, pageFoot, pageHead } from './frame-of-page.ts';
import { type PaperSize, type Sheet, scaleOf, sheetOf } from './look.ts';
import { Pen, type Tag, type Writer } from './pen.ts';
import type { Setting } from './setting.ts';
import { measureWith } from './text.ts';
import { sheetWords } from './words.ts';

export interface RenderOptions {
  readonly size: PaperSize;
  readonly fonts: FontFiles;
}

/** Width at which words are measured, in points: large enough that rounding in the file does not show. */
const MEASURED_AT = 1000;

function documentOf(paper: Paper, voice: Voice, sheet: Sheet, fonts: FontFiles): Writer {
  const title = voice.say(paper.title);
  const doc = new PDFDocument({
    size: [sheet.width, sheet.height],
    margin: 0,
    autoFirstPage: false,
    pdfVersion: '1.7',
    lang: voice.reader.locale,
    tagged: true,
    displayTitle: true,
    // No face of the library's own: it would not be embedded. The face must not stand here either: the library then
    // opens a registered face anew for every text.
    font: null as unknown as string,
    info: {
      Title: title,
      Author: paper.head.left[0] ?? '',
      Producer: 'Slabwright',
      Creator: 'Slabwright',
      // The moment of issue, not of printing: the same paper gives the same bytes.
      CreationDate: new Date(epochOf(paper.at)),
    },
  });
  doc.registerFont('regular', fonts.regular as unknown as ArrayBuffer);
  doc.registerFont('bold', fonts.bold as unknown as ArrayBuffer);
  return doc;
}

/** Everything the writer gives out, as one array. */
function bytesOf(doc: Writer): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    doc.on('error', reject);
    doc.on('end', () => {
      const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
      let at = 0;
      for (const chunk of chunks) {
        bytes.set(chunk, at);
        at += chunk.length;
      }
      resolve(bytes);
    });
  });
}

interface Section {
  readonly blocks: Block[];
  readonly hand: boolean;
}

function sectionsOf(blocks: readonly Block[]): readonly Section[] {
  const sections: Section[] = [{ blocks: [], hand: false }];
  for (const block of blocks) {
    if (block.kind === 'page-break') sections.push({ blocks: [], hand: block.hand ?? false });
    else sections[sections.length - 1]?.blocks.push(block);
  }
  const filled = sections.filter((section) => section.blocks.length > 0);
  return filled.length > 0 ? filled : [{ blocks: [], hand: false }];
}

/**
 * Lays a paper out and returns it as a PDF 1.7 with a structure tree. The same paper, voice and fonts give the same
 * bytes. Runs in Node and in a browser: fonts come in as bytes.
 * @throws Error when the paper names an entry or a message that the voice does not hold.
 */
export async function renderPaper(paper: Paper, voice: Voice, options: RenderOptions): Promise<Uint8Array> {
  const sheet = sheetOf(options.size, paper.kind);
  const doc = documentOf(paper, voice, sheet, options.fonts);
  const finished = bytesOf(doc);
  const widthInEms = rememberWidths(
    (text: string, weight: Weight) => doc.font(weight).fontSize(MEASURED_AT).widthOfString(text) / MEASURED_AT,
    widthsOf(options.fonts),
  );
  const setting: Setting = {
    voice,
    words: sheetWords(paper.language),
    scale: scaleOf(paper.kind),
    measure: measureWith(widthInEms),
  };
  const width = sheet.right - sheet.left;
  const root: Tag = { type: 'Document' };
  const overrides = overrideBand(paper, width, setting);
  const sections = sectionsOf(paper.blocks);
  const inHand: Setting = { ...setting, scale: scaleOf(paper.kind, true) };
  /** Head and foot in the type of the page between them. */
  const frameOf = (first: boolean, hand: boolean) => {
    const own = hand ? inHand : setting;
    const head = pageHead(paper, sheet, first, own);
    // The foot of two figures is the widest; its height holds for all.
    const foot = pageFoot(paper, sheet, 88, 88, own).height;
    const above = head.height + (overrides?.height ?? 0);
    return { own, head, foot, above, room: sheet.bottom - foot - 8 - sheet.top - above };
  };
  const frames = new Map<string, ReturnType<typeof frameOf>>();
  const frame = (first: boolean, hand: boolean): ReturnType<typeof frameOf> => {
    const key = `${first} ${hand}`;
    const known = frames.get(key) ?? frameOf(first, hand);
    frames.set(key, known);
    return known;
  };
  const pages: { readonly box: Box; readonly hand: boolean }[] = [];
  for (const { blocks, hand } of sections) {
    const boxes = partsOf(blocks, { width, height: frame(true, hand).room }, root, frame(true, hand).own);
    const laid = pagesOf(boxes, (index) => frame(pages.length + index === 0, hand).room);
    pages.push(...laid.map((box) => ({ box, hand })));
  }
  if (pages.length === 0) pages.push({ box: { height: 0, gap: 0, draw: () => undefined }, hand: false });
  const pen = new Pen(doc);
  pages.forEach(({ box, hand }, index) => {
    doc.addPage();
    const { own, head, foot, above } = frame(index === 0, hand);
    head.draw(pen, sheet.left, sheet.top);
    overrides?.draw(pen, sheet.left, sheet.top + head.height);
    box.draw(pen, sheet.left, sheet.top + above);
    pageFoot(paper, sheet, index + 1, pages.length, own).draw(pen, sheet.left, sheet.bottom - foot);
  });
  pen.end();
  doc.end();
  return finished;
}
