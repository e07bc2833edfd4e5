import { createContext, useContext } from 'react';
import { type Path, type Raw, startsWith } from './path.ts';

export interface IssueAt {
  readonly path: Path;
  readonly text: string;
  readonly code?: string;
  /** Looks odd, but is planned with. */
  readonly odd?: boolean;
}

/** The file a form edits: raw text in, raw text out, and what is wrong with it where. */
export interface FormTarget {
  readonly root: Raw;
  /** Other files names are taken from, as the catalogue beside a job. */
  readonly beside: Raw;
  change(edit: (draft: Raw) => void, field?: string): void;
  readonly issues: readonly IssueAt[];
  /** Zone of the site; a file without one has days but no moments. */
  readonly zone: string | null;
}

const Context = createContext<FormTarget | null>(null);
export const FormTargetProvider = Context;

export function useTarget(): FormTarget {
  const target = useContext(Context);
  if (!target) throw new Error('a form stands outside a file');
  return target;
}

/** What is wrong with one field: issues at its path or, for a composed field, under it. */
export const issuesAt = (issues: readonly IssueAt[], path: Path, under = true): readonly IssueAt[] =>
  issues.filter((issue) => (under ? startsWith(issue.path, path) : issue.path.join('.') === path.join('.')));
