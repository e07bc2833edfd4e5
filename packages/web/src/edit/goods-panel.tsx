import type { Heading } from '@slabwright/store';
import { useEffect, useId, useState } from 'react';
import { Link } from 'wouter';
import { useJob } from '../job/job-context.tsx';
import { type Goods, goodsHere } from '../keep/goods.ts';
import { goodsWords as w } from './goods-words.ts';
import { NewCatalogue, NewPrices } from './new-goods.tsx';

const nameOf = ({ id, title }: Heading): string => (id.startsWith('example-') ? w.example(title) : title);

/** Which catalogue and which price book the job is planned with. Undo brings the ones before back. */
export function GoodsPanel() {
  const { device, document, catalogue, changeDocument } = useJob();
  const { store } = device;
  const [goods, setGoods] = useState<Goods | null>(null);
  const [version, setVersion] = useState(0);
  useEffect(() => store.watch(() => setVersion((before) => before + 1)), [store]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new version is the reason to ask again
  useEffect(() => {
    let left = false;
    void goodsHere(store).then((found) => {
      if (!left) setGoods(found);
    });
    return () => {
      left = true;
    };
  }, [store, version]);
  const choose = (id: string): void =>
    changeDocument((draft) => {
      (draft as { catalogue: string }).catalogue = id;
    });
  const choosePrices = (id: string): void =>
    changeDocument((draft) => {
      const open = draft as { priceBook?: string };
      if (id === '') delete open.priceBook;
      else open.priceBook = id;
    });
  return (
    <>
      <section className="group">
        <Choice
          label={w.catalogue}
          value={document.catalogue}
          found={goods?.catalogues ?? []}
          href={`/catalogue/${document.catalogue}`}
          onChoose={choose}
        />
        <p className="quiet">{w.changeNote}</p>
        <NewCatalogue store={store} title={w.made} like={catalogue.get().body} onMade={choose} />
      </section>
      <section className="group">
        <Choice
          label={w.priceBook}
          value={document.priceBook ?? ''}
          none={w.noPrices}
          found={goods?.priceBooks ?? []}
          href={document.priceBook ? `/prices/${document.priceBook}/with/${document.catalogue}` : null}
          onChoose={choosePrices}
        />
        <p className="quiet">{w.moneyNote}</p>
        <NewPrices store={store} title={w.made} onMade={choosePrices} />
      </section>
    </>
  );
}

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly none?: string;
  readonly found: readonly Heading[];
  readonly href: string | null;
  onChoose(id: string): void;
}

function Choice({ label, value, none, found, href, onChoose }: ChoiceProps) {
  const id = useId();
  const known = found.some((one) => one.id === value) || (none !== undefined && value === '');
  return (
    <div className="fields">
      <div className="field wide">
        <label htmlFor={id}>{label}</label>
        <select id={id} value={value} onChange={(event) => onChoose(event.target.value)}>
          {none === undefined ? null : <option value="">{none}</option>}
          {known ? null : <option value={value}>{value}</option>}
          {found.map((one) => (
            <option key={one.id} value={one.id}>
              {nameOf(one)}
            </option>
          ))}
        </select>
      </div>
      {href ? (
        <p className="field wide">
          <Link className="press" href={href}>
            {w.open}
            <span className="unseen"> {label}</span>
          </Link>
        </p>
      ) : null}
    </div>
  );
}
