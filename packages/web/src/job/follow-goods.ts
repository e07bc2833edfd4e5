import type { CatalogueFile, PriceBookFile } from '@slabwright/core';
import type { Store } from '@slabwright/store';
import { catalogueHeading, type JobDocument, priceBookHeading } from '../keep/documents.ts';
import { LiveDocument } from '../keep/live-document.ts';

/** The files a job is planned with while it is open. */
export interface OpenGoods {
  readonly catalogue: LiveDocument<CatalogueFile>;
  readonly priceBook: LiveDocument<PriceBookFile> | null;
}

/** Opens the price book of a job; null where the job has none or it is not on this device. */
export async function openPriceBook(store: Store, id: string | undefined): Promise<LiveDocument<PriceBookFile> | null> {
  const stored = id === undefined ? null : await store.get('price-book', id);
  return stored && !stored.removed ? new LiveDocument<PriceBookFile>(store, stored, priceBookHeading) : null;
}

/**
 * Tells when the open job names another catalogue or price book than before: chosen by hand, or brought back by undo.
 * A catalogue that is not on this device changes nothing; what stands open stays. Gives what ends it.
 */
export function followGoods<T extends OpenGoods>(
  store: Store,
  live: LiveDocument<JobDocument>,
  opened: T,
  tell: (next: T) => void,
): () => void {
  let now = opened;
  let left = false;
  let busy = false;
  const look = async (): Promise<void> => {
    if (busy) return;
    busy = true;
    for (;;) {
      const { catalogue, priceBook } = live.get().body;
      const other = catalogue !== now.catalogue.id;
      const otherPrices = priceBook !== now.priceBook?.id;
      if (left || (!other && !otherPrices)) break;
      const stored = other ? await store.get('catalogue', catalogue) : null;
      if (other && !stored) break;
      const prices = otherPrices ? await openPriceBook(store, priceBook) : now.priceBook;
      // a price book that is gone is none; asking for it again would find nothing either
      const settled = prices === null && now.priceBook === null && !other;
      if (left || settled) break;
      if (otherPrices) now.priceBook?.close();
      if (stored) now.catalogue.close();
      now = {
        ...now,
        priceBook: prices,
        ...(stored ? { catalogue: new LiveDocument<CatalogueFile>(store, stored, catalogueHeading) } : {}),
      };
      tell(now);
      if (otherPrices && prices === null && priceBook !== undefined) break;
    }
    busy = false;
  };
  const stop = live.subscribe(() => void look());
  return () => {
    left = true;
    stop();
  };
}
