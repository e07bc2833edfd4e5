import { type InputHTMLAttributes, useId } from 'react';
import { TextInput } from './text-input.tsx';

interface CellProps {
  /** Stands over the cell. */
  readonly name: string;
  /** Its whole name, for who does not see the row it stands in. */
  readonly label: string;
  readonly value: string;
  readonly invalid?: boolean;
  readonly mode?: InputHTMLAttributes<HTMLInputElement>['inputMode'];
  readonly onEnter: (text: string) => void;
}

/** A short field of a row, its name small above it. */
export function Cell({ name, label, value, invalid = false, mode, onEnter }: CellProps) {
  const id = useId();
  return (
    <span className="cell">
      <label htmlFor={id}>{name}</label>
      <TextInput id={id} value={value} label={label} invalid={invalid} mode={mode} onEnter={onEnter} />
    </span>
  );
}
