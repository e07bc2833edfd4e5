import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface ReadPage {
  readonly width: number;
  readonly height: number;
  /** Text in the order of the file. */
  readonly text: string;
  /** Text that is marked as an artifact: heads, feet. */
  readonly artifacts: string;
  /** Kinds of the structure tree that have content on this page. */
  readonly roles: readonly string[];
  readonly alts: readonly string[];
  /** Lowest baseline, in points from the foot of the page. */
  readonly lowest: number;
}

export interface ReadPdf {
  readonly pages: readonly ReadPage[];
  readonly title: string;
  readonly language: string;
  readonly tagged: boolean;
}

interface Node {
  readonly role?: string;
  readonly alt?: string;
  readonly children?: readonly Node[];
}

const all = (node: Node): readonly Node[] => [node, ...(node.children ?? []).flatMap(all)];

/** Opens a PDF with a reader that is not ours. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0 });
  const doc = await task.promise;
  const pages: ReadPage[] = [];
  for (let number = 1; number <= doc.numPages; number += 1) {
    const page = await doc.getPage(number);
    const [, , width = 0, height = 0] = page.view;
    const content = await page.getTextContent({ includeMarkedContent: true });
    let text = '';
    let artifacts = '';
    let lowest = height;
    const open: string[] = [];
    for (const item of content.items) {
      if ('str' in item) {
        const words = item.str + (item.hasEOL ? '\n' : '');
        text += words;
        if (item.str.trim() !== '') lowest = Math.min(lowest, Number(item.transform[5]));
        if (open.includes('Artifact')) artifacts += words;
      } else if (item.type === 'endMarkedContent') open.pop();
      else open.push(String((item as { tag?: string }).tag ?? ''));
    }
    const tree = (await page.getStructTree()) as Node | null;
    const nodes = tree ? all(tree) : [];
    pages.push({
      width,
      height,
      text,
      artifacts,
      roles: nodes.flatMap(({ role }) => (role ? [role] : [])),
      lowest,
      alts: nodes.flatMap(({ alt }) => (alt ? [alt] : [])),
    });
  }
  const { info } = (await doc.getMetadata()) as { info: { Title?: string; Language?: string } };
  const marked = await doc.getMarkInfo();
  await task.destroy();
  return {
    pages,
    title: info.Title ?? '',
    language: info.Language ?? '',
    tagged: (marked as { Marked?: boolean } | null)?.Marked === true,
  };
}
