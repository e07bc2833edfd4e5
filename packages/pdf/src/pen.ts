import type { Command, Point, Ring, Stroke } from './commands.ts';
import type { Line, Run } from './text.ts';

/** The part of the PDF writer that painting needs; both builds of the library offer it. */
export type Writer = PDFKit.PDFDocument;

/** Place in the structure tree. Made when content is planned, written when it is first drawn. */
export interface Tag {
  readonly type: string;
  readonly parent?: Tag;
  readonly alt?: string;
  readonly scope?: 'Row' | 'Column';
}

export const tag = (type: string, parent: Tag, more: { alt?: string; scope?: 'Row' | 'Column' } = {}): Tag => ({
  type,
  parent,
  ...more,
});

type Element = PDFKit.PDFStructureElement;

/** Draws on the current page and keeps the structure tree beside it. */
export class Pen {
  readonly #doc: Writer;
  readonly #elements = new Map<Tag, Element>();
  readonly #top: Element[] = [];

  constructor(doc: Writer) {
    this.#doc = doc;
  }

  /** Content that belongs to the text: read aloud, copied, in order. */
  marked(at: Tag, draw: () => void): void {
    const element = this.#element(at);
    const content = this.#doc.markStructureContent(at.type);
    draw();
    this.#doc.endMarkedContent();
    element.add(content);
  }

  /** Rules, heads repeated on a later page, feet: seen, not read. */
  artifact(draw: () => void): void {
    this.#doc.markContent('Artifact', { type: 'Layout' });
    draw();
    this.#doc.endMarkedContent();
  }

  pagination(draw: () => void): void {
    this.#doc.markContent('Artifact', { type: 'Pagination' });
    draw();
    this.#doc.endMarkedContent();
  }

  /** Closes the structure tree; nothing may be drawn after it. */
  end(): void {
    for (const element of this.#top) element.end();
  }

  #element(at: Tag): Element {
    const known = this.#elements.get(at);
    if (known) return known;
    const { type, alt, scope, parent } = at;
    const options = { ...(alt ? { alt } : {}), ...(scope ? { scope } : {}) };
    const made = this.#doc.struct(type, options);
    this.#elements.set(at, made);
    if (parent) this.#element(parent).add(made);
    else {
      this.#doc.addStructure(made);
      this.#top.push(made);
    }
    return made;
  }

  text(one: Run, x: number, baseline: number): void {
    this.#doc
      .font(one.weight)
      .fontSize(one.size)
      .fillColor(one.ink)
      .text(one.text, x, baseline, { lineBreak: false, baseline: 'alphabetic' });
  }

  /** A line of runs on one baseline. */
  line(line: Line, x: number, baseline: number): void {
    for (const part of line.parts) this.text(part, x + part.x, baseline);
  }

  paint(commands: readonly Command[]): void {
    for (const command of commands) this.#paint(command);
  }

  #paint(command: Command): void {
    const doc = this.#doc;
    if (command.draw === 'text') {
      const [x, y] = command.at;
      if (!command.turned) {
        this.text(command.run, x, y);
        return;
      }
      doc.save().rotate(-90, { origin: [x, y] });
      this.text(command.run, x, y);
      doc.restore();
      return;
    }
    doc.save();
    if (command.draw === 'clip') {
      for (const ring of command.rings) this.#trace(ring, true);
      doc.clip('even-odd');
      this.paint(command.inside);
    } else {
      if (command.draw === 'lines') for (const ring of command.rings) this.#trace(ring, command.closed);
      else doc.ellipse(...command.at, ...command.radii);
      this.#finish(command.fill, command.stroke);
    }
    doc.restore();
  }

  #trace(ring: Ring, closed: boolean): void {
    ring.forEach(([x, y]: Point, index) => {
      if (index === 0) this.#doc.moveTo(x, y);
      else this.#doc.lineTo(x, y);
    });
    if (closed) this.#doc.closePath();
  }

  #finish(fill: string | undefined, stroke: Stroke | undefined): void {
    const doc = this.#doc;
    if (stroke) {
      doc.lineWidth(stroke.width).lineJoin('miter');
      if (stroke.dash) {
        const [first = 1, ...rest] = stroke.dash;
        // The type of the library knows one length; the array is written to the file as it is.
        doc.addContent(`[${[first, ...rest].join(' ')}] 0 d`);
      }
    }
    if (fill && stroke) doc.fillAndStroke(fill, stroke.ink, 'even-odd');
    else if (fill) doc.fill(fill, 'even-odd');
    else if (stroke) doc.stroke(stroke.ink);
  }
}
