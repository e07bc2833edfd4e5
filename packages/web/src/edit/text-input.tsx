import { type InputHTMLAttributes, useEffect, useRef, useState } from 'react';

interface TextInputProps {
  readonly id?: string;
  /** What the file holds. */
  readonly value: string;
  /** Called when a person leaves the field, presses Enter, or rests. `resting` is true while they are still in it. */
  readonly onEnter: (text: string, resting: boolean) => void;
  readonly label?: string;
  readonly example?: string;
  readonly describedBy?: string | undefined;
  readonly invalid?: boolean;
  readonly mode?: InputHTMLAttributes<HTMLInputElement>['inputMode'] | undefined;
  readonly long?: boolean;
  readonly className?: string;
}

/** A rest this long puts what was typed into the file, so that a closed tab loses nothing. */
const REST = 900;

/** One line of text that is never lost: leaving, Enter, a rest or the screen going away put it into the file. */
export function TextInput(props: TextInputProps) {
  const { id, value, onEnter, label, example, describedBy, invalid, mode, long, className } = props;
  const [text, setText] = useState(value);
  const entered = useRef(value);
  const now = useRef({ text, onEnter });
  now.current = { text, onEnter };
  useEffect(() => {
    if (value === entered.current) return;
    entered.current = value;
    setText(value);
  }, [value]);
  const enter = (resting: boolean): void => {
    if (now.current.text === entered.current) return;
    entered.current = now.current.text;
    now.current.onEnter(now.current.text, resting);
  };
  const enterNow = useRef(enter);
  enterNow.current = enter;
  // biome-ignore lint/correctness/useExhaustiveDependencies: every key begins the rest anew
  useEffect(() => {
    const rest = setTimeout(() => enterNow.current(true), REST);
    return () => clearTimeout(rest);
  }, [text]);
  useEffect(() => () => enterNow.current(false), []);
  const shared = {
    ...(id ? { id } : {}),
    value: text,
    'aria-invalid': invalid === true,
    ...(label ? { 'aria-label': label } : {}),
    ...(describedBy ? { 'aria-describedby': describedBy } : {}),
    ...(className ? { className } : {}),
    onBlur: () => enter(false),
  };
  if (long) return <textarea {...shared} rows={3} onChange={(event) => setText(event.target.value)} />;
  return (
    <input
      {...shared}
      type="text"
      autoComplete="off"
      spellCheck={false}
      placeholder={example}
      inputMode={mode}
      onChange={(event) => setText(event.target.value)}
      onKeyDown={(event) => {
        if (event.key === 'Enter') enter(false);
        if (event.key === 'Escape') setText(entered.current);
      }}
    />
  );
}
