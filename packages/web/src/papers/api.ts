import type { CatalogueFile, Instant, JobFile, PriceBookFile } from '@slabwright/core';
import type { Units } from '../worker/api.ts';

/** What the screen asks of the papers and gets back. */

export type Language = 'en' | 'es';
export type PaperSize = 'letter' | 'a4';

/** Everything a paper is made from, as it is stored. */
export interface PapersRequest {
  readonly job: JobFile;
  readonly catalogue: CatalogueFile;
  readonly priceBook: PriceBookFile | null;
  readonly weather: unknown;
  readonly now: number | Instant;
  readonly units?: Units;
  readonly locale: string;
  readonly option: string;
}

export interface PaperView {
  readonly kind: string;
  readonly title: string;
  readonly ok: boolean;
  readonly why: readonly string[];
}

/** What runs in the worker of the papers. */
export interface PapersDesk {
  /**
   * Plans the option with its pours; `coat` is told each coat whose pours are found.
   * False when the files cannot be planned as they stand; the plan itself says why.
   */
  planPapers(request: PapersRequest, coat: (found: number) => void): boolean;
  /** Papers of the last such plan. */
  papers(language: Language): Promise<readonly PaperView[]>;
  /** One of them as PDF. */
  pdf(kind: string, language: Language, size: PaperSize): Promise<Uint8Array>;
}
