import { useState } from 'react';
import { Field } from './field.tsx';
import { issuesAt, useTarget } from './form-target.tsx';
import { insertAt, listAt, type Path, removeAt } from './path.ts';
import type { ListPart, Part } from './spec.ts';
import { words } from './words.ts';

/** A form from its description: groups, fields and lists of items. */
export function Form({ parts, base = [] }: { readonly parts: readonly Part[]; readonly base?: Path }) {
  return (
    <div className="fields">
      {parts.map((part) => {
        if (part.part === 'field') return <Field key={part.path.join('.')} field={part} base={base} />;
        if (part.part === 'list') return <ItemList key={part.path.join('.')} list={part} base={base} />;
        return (
          <section className="group" key={part.label}>
            <h3>{part.label}</h3>
            {part.note ? <p className="quiet">{part.note}</p> : null}
            <Form parts={part.parts} base={base} />
          </section>
        );
      })}
    </div>
  );
}

/** Items one under the other: each says itself in a line and opens to be changed. Adding opens the new one. */
function ItemList({ list, base }: { readonly list: ListPart; readonly base: Path }) {
  const { root, change, issues } = useTarget();
  const path = [...base, ...list.path];
  const items = listAt(root, path);
  const [opened, open] = useState<number | null>(null);
  const wrongHere = issuesAt(issues, path, false);
  return (
    <section className="group list">
      <h3>{list.label}</h3>
      {list.note ? <p className="quiet">{list.note}</p> : null}
      {wrongHere.map(({ text }) => (
        <p className="wrong" role="alert" key={text}>
          {text}
        </p>
      ))}
      <ul>
        {items.map((item, i) => {
          const at = [...path, i];
          const wrong = issuesAt(issues, at);
          const shown = opened === i;
          const title = list.title(item) || `${list.one} ${i + 1}`;
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: half-typed items have no name of their own yet
            <li key={i} className={shown ? 'shown' : ''}>
              <button type="button" className="item" aria-expanded={shown} onClick={() => open(shown ? null : i)}>
                <b>{title}</b>
                <small>{shown ? words.fold : words.open}</small>
              </button>
              {!shown && wrong.length > 0 ? (
                <p className="wrong">{[...new Set(wrong.map(({ text }) => text))].slice(0, 3).join(' ')}</p>
              ) : null}
              {shown ? (
                <>
                  {issuesAt(issues, at, false).map(({ text }) => (
                    <p className="wrong" role="alert" key={text}>
                      {text}
                    </p>
                  ))}
                  <Form parts={list.parts} base={at} />
                  <button
                    type="button"
                    className="press"
                    onClick={() => {
                      open(null);
                      change((draft) => removeAt(draft, at));
                    }}
                  >
                    {words.remove(title)}
                  </button>
                </>
              ) : null}
            </li>
          );
        })}
      </ul>
      <button
        type="button"
        className="press"
        onClick={() => {
          change((draft) => insertAt(draft, path, list.begin(items)));
          open(items.length);
        }}
      >
        {words.add(list.one)}
      </button>
    </section>
  );
}
