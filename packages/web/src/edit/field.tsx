import { type ReactNode, useId } from 'react';
import { FactMore } from './fact-more.tsx';
import { issuesAt, useTarget } from './form-target.tsx';
import { MomentInput } from './moment-input.tsx';
import { listAt, type Path, removeAt, setAt, textAt, valueAt } from './path.ts';
import { PointInput, PointsInput } from './place-input.tsx';
import type { FieldPart } from './spec.ts';
import { TextInput } from './text-input.tsx';
import { words } from './words.ts';

/** One field of a file with its label, its note and what is wrong with it. */
export function Field({ field, base }: { readonly field: FieldPart; readonly base: Path }) {
  const path = [...base, ...field.path];
  const { issues } = useTarget();
  const id = useId();
  const found = issuesAt(issues, path);
  const many = ['seen', 'answer', 'some of', 'moment', 'point', 'points'].includes(field.leaf.is);
  const described = [field.note ? `${id}-note` : '', found.length > 0 ? `${id}-wrong` : ''].filter(Boolean).join(' ');
  const body = (
    <Input field={field} path={path} id={id} describedBy={described || undefined} invalid={found.length > 0} />
  );
  const notes = (
    <>
      {field.note ? (
        <small id={`${id}-note`} className="quiet">
          {field.note}
        </small>
      ) : null}
      {found.length > 0 ? (
        <span id={`${id}-wrong`} className="wrong" role="alert">
          {[...new Set(found.map(({ text }) => text))].map((text) => (
            <span key={text}>{text}</span>
          ))}
        </span>
      ) : null}
    </>
  );
  if (field.leaf.is === 'flag') {
    return (
      <div className="field">
        {body}
        {notes}
      </div>
    );
  }
  if (many) {
    return (
      <fieldset className={`field ${field.leaf.is === 'points' ? 'wide' : ''}`}>
        <legend>{field.label}</legend>
        {body}
        {notes}
      </fieldset>
    );
  }
  return (
    <div className={`field${field.leaf.is === 'text' && field.leaf.long ? ' wide' : ''}`}>
      <label htmlFor={id}>{field.label}</label>
      {body}
      {notes}
    </div>
  );
}

interface InputProps {
  readonly field: FieldPart;
  readonly path: Path;
  readonly id: string;
  readonly describedBy: string | undefined;
  readonly invalid: boolean;
}

const numberOr = (text: string): string | number => (/^-?\d+(\.\d+)?$/.test(text.trim()) ? Number(text) : text);

function Input({ field, path, id, describedBy, invalid }: InputProps): ReactNode {
  const { root, beside, change } = useTarget();
  const key = path.join('.');
  const { leaf } = field;
  const set = (value: unknown, where: Path = path): void =>
    change((draft) => {
      if (value === '' || value === undefined) removeAt(draft, where);
      else setAt(draft, where, value);
    }, key);
  const text = { id, describedBy, invalid } as const;
  switch (leaf.is) {
    case 'quantity':
    case 'clock':
    case 'amount':
      return (
        <TextInput
          {...text}
          value={textAt(root, path)}
          example={leaf.example}
          {...(leaf.is === 'amount' ? { mode: 'decimal' as const } : {})}
          onEnter={(typed) => set(typed.trim() === '' ? '' : typed)}
        />
      );
    case 'fact': {
      const whole = valueAt(root, path);
      const inside = whole !== null && typeof whole === 'object';
      const where: Path = inside ? [...path, 'value'] : path;
      return (
        <>
          <TextInput
            {...text}
            value={textAt(root, where)}
            example={leaf.example}
            onEnter={(typed) => (typed.trim() === '' ? set('') : set(typed, where))}
          />
          <FactMore label={field.label} path={path} example={leaf.example} />
        </>
      );
    }
    case 'number':
      return (
        <TextInput
          {...text}
          value={textAt(root, path)}
          example={leaf.example}
          mode="decimal"
          onEnter={(typed) => set(numberOr(typed))}
        />
      );
    case 'text':
      return (
        <TextInput {...text} value={textAt(root, path)} long={leaf.long === true} onEnter={(typed) => set(typed)} />
      );
    case 'lines':
      return (
        <TextInput
          {...text}
          long
          value={listAt(root, path).map(String).join('\n')}
          onEnter={(typed) => {
            const lines = typed
              .split('\n')
              .map((line) => line.trim())
              .filter(Boolean);
            set(lines.length > 0 ? lines : '');
          }}
        />
      );
    case 'choice':
      return (
        <Select
          id={id}
          describedBy={describedBy}
          invalid={invalid}
          value={textAt(root, path)}
          choices={leaf.choices.map((one) => ({ id: one, name: leaf.say?.[one] ?? one }))}
          onChoose={(one) => set(one)}
        />
      );
    case 'one of':
      return (
        <Select
          id={id}
          describedBy={describedBy}
          invalid={invalid}
          value={textAt(root, path)}
          choices={leaf.from(root, beside, path)}
          onChoose={(one) => set(one)}
        />
      );
    case 'some of':
      return <SomeOf path={path} choices={leaf.from(root, beside, path)} onChoose={(some) => set(some)} />;
    case 'seen':
      return (
        <span className="seen">
          {(['yes', 'no', 'not known'] as const).map((answer) => (
            <label key={answer}>
              <input
                type="radio"
                name={id}
                checked={valueAt(root, path) === answer}
                onChange={() => set(answer)}
                {...(describedBy ? { 'aria-describedby': describedBy } : {})}
              />
              {words.seen[answer]}
            </label>
          ))}
        </span>
      );
    case 'answer':
      return (
        <span className="seen">
          {([true, false] as const).map((answer) => (
            <label key={`${answer}`}>
              <input type="radio" name={id} checked={valueAt(root, path) === answer} onChange={() => set(answer)} />
              {words.seen[answer ? 'yes' : 'no']}
            </label>
          ))}
        </span>
      );
    case 'flag':
      return (
        <label className="tick">
          <input
            type="checkbox"
            checked={valueAt(root, path) === true}
            onChange={(event) => set(event.target.checked ? true : '')}
          />
          {field.label}
        </label>
      );
    case 'date':
      return (
        <input
          id={id}
          type="date"
          value={textAt(root, path)}
          aria-invalid={invalid}
          {...(describedBy ? { 'aria-describedby': describedBy } : {})}
          onChange={(event) => set(event.target.value)}
        />
      );
    case 'moment':
      return (
        <MomentInput
          label={field.label}
          value={textAt(root, path)}
          dayIsEnough={leaf.dayIsEnough === true}
          describedBy={describedBy}
          invalid={invalid}
          onEnter={(typed) => set(typed)}
        />
      );
    case 'point':
      return <PointInput label={field.label} path={path} />;
    case 'points':
      return <PointsInput label={field.label} path={path} least={leaf.least} />;
  }
}

interface SelectProps {
  readonly id: string;
  readonly describedBy: string | undefined;
  readonly invalid: boolean;
  readonly value: string;
  readonly choices: readonly { readonly id: string; readonly name: string }[];
  readonly onChoose: (id: string) => void;
}

/** A name the file holds that is not among the choices stays visible: it is what was typed. */
function Select({ id, describedBy, invalid, value, choices, onChoose }: SelectProps) {
  const known = value === '' || choices.some((one) => one.id === value);
  return (
    <select
      id={id}
      value={value}
      aria-invalid={invalid}
      {...(describedBy ? { 'aria-describedby': describedBy } : {})}
      onChange={(event) => onChoose(event.target.value)}
    >
      <option value="">{words.unset}</option>
      {known ? null : <option value={value}>{value}</option>}
      {choices.map((one) => (
        <option key={one.id} value={one.id}>
          {one.name}
        </option>
      ))}
    </select>
  );
}

function SomeOf({
  path,
  choices,
  onChoose,
}: {
  readonly path: Path;
  readonly choices: readonly { readonly id: string; readonly name: string }[];
  readonly onChoose: (some: readonly string[] | '') => void;
}) {
  const { root } = useTarget();
  const chosen = listAt(root, path).map(String);
  return (
    <span className="some">
      {choices.map(({ id, name }) => (
        <label className="tick" key={id}>
          <input
            type="checkbox"
            checked={chosen.includes(id)}
            onChange={(event) => {
              const next = event.target.checked ? [...chosen, id] : chosen.filter((one) => one !== id);
              onChoose(next.length > 0 ? next : '');
            }}
          />
          {name}
        </label>
      ))}
    </span>
  );
}
