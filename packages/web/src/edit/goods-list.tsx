import type { Heading, Store } from '@slabwright/store';
import { useEffect, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { type Goods, goodsHere } from '../keep/goods.ts';
import { words as app } from '../words.ts';
import { goodsWords as w } from './goods-words.ts';
import { NewCatalogue, NewPrices } from './new-goods.tsx';
import './edit.css';

/** Every catalogue and price book of this device, and a new one of each. */
export function GoodsList({ store }: { readonly store: Store }) {
  const [goods, setGoods] = useState<Goods | null>(null);
  const [, navigate] = useLocation();
  useEffect(() => {
    let left = false;
    void goodsHere(store).then((found) => {
      if (!left) setGoods(found);
    });
    return () => {
      left = true;
    };
  }, [store]);
  if (!goods) return null;
  return (
    <div className="pages">
      <Listed title={w.catalogues} found={goods.catalogues} address={(id) => `/catalogue/${id}`} />
      <NewCatalogue store={store} title={w.newCatalogue} like={null} onMade={(id) => navigate(`/catalogue/${id}`)} />
      <Listed title={w.priceBooks} found={goods.priceBooks} address={(id) => `/prices/${id}`} />
      <NewPrices store={store} title={w.newPrices} onMade={(id) => navigate(`/prices/${id}`)} />
    </div>
  );
}

interface ListedProps {
  readonly title: string;
  readonly found: readonly Heading[];
  readonly address: (id: string) => string;
}

function Listed({ title, found, address }: ListedProps) {
  return (
    <>
      <h3>{title}</h3>
      {found.length === 0 ? <p className="quiet">{w.none}</p> : null}
      <ul>
        {found.map(({ id, title: name }) => (
          <li key={id}>
            <Link href={address(id)}>
              <b>{name}</b>
              {id.startsWith('example-') ? <small>{app.list.examples}</small> : null}
            </Link>
          </li>
        ))}
      </ul>
    </>
  );
}
