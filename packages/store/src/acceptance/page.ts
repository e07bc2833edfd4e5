import { eraseIndexedDbStore, openIndexedDbStore } from '../indexeddb/index.ts';
import type { MakePlace } from './place.ts';

/** Places in the browser's own database, each under a name of its own; needs the interface of a browser. */
export function indexedDbPlaces(prefix = 'slabwright-acceptance'): MakePlace {
  let count = 0;
  return async () => {
    const name = `${prefix}-${++count}`;
    return {
      open: (wrap) => openIndexedDbStore({ name, ...(wrap === undefined ? {} : { wrap }) }),
      erase: () => eraseIndexedDbStore(name),
    };
  };
}
