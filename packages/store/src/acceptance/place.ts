import type { Engine } from '../engine.ts';
import type { Store } from '../port.ts';

/** One empty store's worth of room, made afresh for each case. */
export interface Place {
  /** Opens the store of this place; opened again, it finds what was acknowledged. */
  readonly open: (wrap?: (engine: Engine) => Engine) => Promise<Store>;
  /** Called when all handles are closed. */
  readonly erase: () => Promise<void>;
}

export type MakePlace = () => Promise<Place>;

/** What a case is given. */
export interface Opening {
  readonly open: Place['open'];
  /** Opens the store of a second place, empty at first. */
  readonly openOther: Place['open'];
}

/** One rule put to the test. */
export interface AcceptanceCase {
  /** The rule's number in SPEC.md. */
  readonly rule: string;
  readonly title: string;
  /** True where a second open handle must be told of changes, which not every adapter can. */
  readonly needsTelling?: boolean;
  readonly run: (opening: Opening) => Promise<void>;
}

/** Runs one case in two places of its own and closes whatever it opened, also when it fails. */
export async function runCase(acceptanceCase: AcceptanceCase, makePlace: MakePlace): Promise<void> {
  const places = [await makePlace(), await makePlace()] as const;
  const opened: Store[] = [];
  const opening = (place: Place): Place['open'] => {
    return async (wrap) => {
      const store = await place.open(wrap);
      opened.push(store);
      return store;
    };
  };
  try {
    await acceptanceCase.run({ open: opening(places[0]), openOther: opening(places[1]) });
  } finally {
    for (const store of opened) await store.close();
    for (const place of places) await place.erase();
  }
}
