import { createContext, type ReactNode, useContext } from 'react';
import { usePlan } from '../job/job-context.tsx';

/** Address of the working of an entry, beside the step in hand. */
export const workingPath = (job: string, step: string, id: string): string =>
  `/job/${job}/${step}/working/${encodeURIComponent(id)}`;

/** The step whose facts are drawn. */
export const StepInHand = createContext('survey');

export const useStepInHand = (): string => useContext(StepInHand);

/**
 * Opens the working of any entry of the plan. Without children it says the figure: number loud, unit and band quiet. A
 * plain anchor, because a hundred of them stand on a screen and none needs to know where the reader is.
 */
export function WorkingLink({ id, children }: { readonly id: string; readonly children?: ReactNode }) {
  const { id: job } = usePlan();
  const step = useStepInHand();
  return (
    <a className="open" href={`#${workingPath(job, step, id)}`}>
      {children ?? <FigureText id={id} />}
    </a>
  );
}

export function FigureText({ id, band = true }: { readonly id: string; readonly band?: boolean }) {
  const { voice } = usePlan();
  if (!voice?.has(id)) return <>—</>;
  const shown = voice.entry(id);
  const classes = ['fig', shown.origin === 'assumed' ? 'assumed' : '', shown.outside ? 'beyond' : ''];
  return (
    <span className={classes.filter(Boolean).join(' ')}>
      <b>{shown.number}</b>
      {shown.unit || (band && shown.band) ? (
        <i>
          {shown.unit ? ` ${shown.unit}` : ''}
          {band && shown.band ? ` ${shown.band}` : ''}
        </i>
      ) : null}
    </span>
  );
}
