import { memo } from 'react';
import { Link } from 'wouter';
import { usePlan } from '../job/job-context.tsx';
import { VerdictMark } from '../marks/verdict-mark.tsx';
import { numberOf, STEPS } from '../steps/index.tsx';
import type { Step } from '../steps/step.ts';
import type { StepView } from '../steps/step-view.tsx';
import { words } from '../words.ts';

interface ListProps {
  readonly view: StepView | null;
  readonly step: Step;
}

/** The steps in the trade's own order; each says its verdict and its answer, so the list is the job on one page. */
export const StepList = memo(function StepList({ view, step: current }: ListProps) {
  const { id } = usePlan();
  const firstSite = STEPS.findIndex(({ phase }) => phase === 'site');
  return (
    <nav className={`steps ${current.phase}`} aria-label={words.steps.nav}>
      <ol>
        {STEPS.map((step, i) => {
          const verdict = view ? step.verdict(view) : 'not yet';
          const classes = [
            step.id === current.id ? 'now' : '',
            step.phase === 'site' ? 'after' : '',
            i === firstSite ? 'later' : '',
          ];
          return (
            <li key={step.id} className={classes.filter(Boolean).join(' ')}>
              <Link
                href={`/job/${id}/${step.id}`}
                data-n={i + 1}
                aria-label={words.steps.of(step.title, words.verdict[verdict])}
                aria-current={step.id === current.id ? 'step' : undefined}
              >
                <VerdictMark verdict={verdict} />
                <b>{step.title}</b>
                <small>{view ? step.answer(view) : ''}</small>
              </Link>
            </li>
          );
        })}
      </ol>
    </nav>
  );
});

/** On a phone: which step this is, and the one before and after it. */
export function StepHead({ step }: { readonly step: Step }) {
  const { id } = usePlan();
  const number = numberOf(step.id);
  const beside = (n: number) => {
    const other = STEPS[n - 1];
    if (!other) return null;
    return (
      <Link href={`/job/${id}/${other.id}`} aria-label={words.steps.before(n, other.title)}>
        {n < number ? `‹ ${n}` : `${n} ›`}
      </Link>
    );
  };
  return (
    <div className="stephead">
      <h2>{`${number} ${step.title}`}</h2>
      <div className="phone">
        {beside(number - 1)}
        {beside(number + 1)}
      </div>
    </div>
  );
}
