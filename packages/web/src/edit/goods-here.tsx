import type { Store } from '@slabwright/store';
import { lazy, Suspense, useState } from 'react';
import { goodsWords as w } from './goods-words.ts';

const GoodsList = lazy(() => import('./goods-list.tsx').then(({ GoodsList: list }) => ({ default: list })));

/** Catalogues and price books on the first screen, loaded when somebody opens them. */
export function GoodsHere({ store }: { readonly store: Store }) {
  const [opened, setOpened] = useState(false);
  return (
    <section className="goods">
      <details onToggle={(event) => setOpened(event.currentTarget.open)}>
        <summary>
          <h2>{w.here}</h2>
        </summary>
        {opened ? (
          <Suspense fallback={null}>
            <GoodsList store={store} />
          </Suspense>
        ) : null}
      </details>
    </section>
  );
}
