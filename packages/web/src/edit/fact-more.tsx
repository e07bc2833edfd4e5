import { useId } from 'react';
import { useTarget } from './form-target.tsx';
import { type Path, removeAt, setAt, textAt, valueAt } from './path.ts';
import { TextInput } from './text-input.tsx';
import { words } from './words.ts';

const ORIGINS = ['reading', 'data sheet', 'own test', "firm's rate", 'chosen', 'assumed'] as const;

/** Where a value comes from and the range it is believed in. Plain text means the usual origin of its field. */
export function FactMore({
  label,
  path,
  example,
}: {
  readonly label: string;
  readonly path: Path;
  readonly example: string;
}) {
  const { root, change } = useTarget();
  const id = useId();
  const whole = valueAt(root, path);
  if (whole === undefined) return null;
  const inside = whole !== null && typeof whole === 'object';
  const at = (key: string): string => (inside ? textAt(root, [...path, key]) : '');
  const set = (key: string, text: string): void =>
    change(
      (draft) => {
        const before = valueAt(draft, path);
        if (typeof before === 'string') setAt(draft, path, { value: before });
        if (text.trim() === '') removeAt(draft, [...path, key]);
        else setAt(draft, [...path, key], text);
        const after = valueAt(draft, path) as Record<string, unknown>;
        if (typeof after.value === 'string' && Object.keys(after).length === 1) setAt(draft, path, after.value);
      },
      [...path, key].join('.'),
    );
  const said = [at('origin'), at('where'), at('when')].filter(Boolean).join(', ');
  return (
    <details className="origin">
      <summary>
        {words.origin}
        {said ? `: ${said}` : ''}
      </summary>
      <div className="fields">
        <label className="field">
          <span>{words.origin}</span>
          <select
            value={at('origin')}
            aria-label={`${label}: ${words.origin}`}
            onChange={(event) => set('origin', event.target.value)}
          >
            <option value="">{words.originUsual}</option>
            {ORIGINS.map((one) => (
              <option key={one}>{one}</option>
            ))}
          </select>
        </label>
        <label className="field" htmlFor={`${id}-where`}>
          <span>{words.originWhere}</span>
          <TextInput id={`${id}-where`} value={at('where')} onEnter={(text) => set('where', text)} />
        </label>
        <label className="field" htmlFor={`${id}-when`}>
          <span>{words.originWhen}</span>
          <input
            id={`${id}-when`}
            type="date"
            value={at('when').slice(0, 10)}
            onChange={(event) => set('when', event.target.value)}
          />
        </label>
        {(['low', 'high'] as const).map((end) => (
          <label className="field" key={end} htmlFor={`${id}-${end}`}>
            <span>{words[end]}</span>
            <TextInput id={`${id}-${end}`} value={at(end)} example={example} onEnter={(text) => set(end, text)} />
          </label>
        ))}
      </div>
    </details>
  );
}
