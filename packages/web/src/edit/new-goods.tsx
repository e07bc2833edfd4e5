import type { CatalogueFile } from '@slabwright/core';
import { type Store, StoreError } from '@slabwright/store';
import { type ReactNode, useId, useState } from 'react';
import { type FirstPrices, firstPriceBook, freeId, keepPriceBook, newCatalogue } from '../keep/goods.ts';
import { planWorker } from '../worker/client.ts';
import { goodsWords as w } from './goods-words.ts';

/** Small forms that make a catalogue or a price book from nothing. */

interface TypedProps {
  readonly label: string;
  readonly value: string;
  readonly example: string;
  onChange(value: string): void;
}

function Typed({ label, value, example, onChange }: TypedProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        value={value}
        placeholder={example}
        onChange={(event) => onChange(event.target.value)}
      />
    </div>
  );
}

interface MakingProps {
  readonly title: string;
  readonly press: string;
  /** Makes it, or says what is wrong. */
  make(): Promise<readonly string[]>;
  readonly children: ReactNode;
}

function Making({ title, press, make, children }: MakingProps) {
  const [wrong, setWrong] = useState<readonly string[]>([]);
  const making = async (): Promise<void> => {
    try {
      setWrong(await make());
    } catch (trouble) {
      if (!(trouble instanceof StoreError)) throw trouble;
      setWrong([trouble.message]);
    }
  };
  return (
    <details className="make">
      <summary>{title}</summary>
      <form
        className="fields"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void making();
        }}
      >
        {children}
        <div className="field wide">
          {wrong.map((line) => (
            <p className="wrong" role="alert" key={line}>
              {line}
            </p>
          ))}
          <button type="submit" className="press">
            {press}
          </button>
        </div>
      </form>
    </details>
  );
}

interface NewProps {
  readonly store: Store;
  readonly title: string;
  onMade(id: string): void;
}

export function NewCatalogue({ store, title, like, onMade }: NewProps & { readonly like: CatalogueFile | null }) {
  const id = useId();
  const [name, setName] = useState('');
  const [copies, setCopies] = useState(false);
  const make = async (): Promise<readonly string[]> => {
    if (name.trim() === '') return [w.noName];
    onMade(await newCatalogue(store, name, copies ? like : null));
    return [];
  };
  return (
    <Making title={title} press={w.makeCatalogue} make={make}>
      <Typed label={w.name} value={name} example={w.nameExample} onChange={setName} />
      {like ? (
        <div className="field">
          <label htmlFor={id}>{w.begin}</label>
          <select
            id={id}
            value={copies ? 'copy' : 'empty'}
            onChange={(event) => setCopies(event.target.value === 'copy')}
          >
            <option value="empty">{w.empty}</option>
            <option value="copy">{w.copy}</option>
          </select>
        </div>
      ) : null}
    </Making>
  );
}

const NOTHING: FirstPrices = { currency: '', wage: '', overhead: '', profit: '' };
const EXAMPLES: FirstPrices = { currency: 'USD', wage: '38.00', overhead: '25 %', profit: '20 %' };

export function NewPrices({ store, title, onMade }: NewProps) {
  const [name, setName] = useState('');
  const [typed, setTyped] = useState<FirstPrices>(NOTHING);
  const make = async (): Promise<readonly string[]> => {
    if (name.trim() === '') return [w.noName];
    const id = await freeId(store, 'price-book', name);
    const body = firstPriceBook(id, typed);
    const issues = await planWorker().issues('price-book', body);
    if (issues.length > 0) return issues.map(({ text }) => text);
    await keepPriceBook(store, id, body);
    onMade(id);
    return [];
  };
  return (
    <Making title={title} press={w.makePrices} make={make}>
      <Typed label={w.name} value={name} example={w.nameExample} onChange={setName} />
      {(['currency', 'wage', 'overhead', 'profit'] as const).map((key) => (
        <Typed
          key={key}
          label={w[key]}
          value={typed[key]}
          example={EXAMPLES[key]}
          onChange={(value) => setTyped((before) => ({ ...before, [key]: value }))}
        />
      ))}
    </Making>
  );
}
