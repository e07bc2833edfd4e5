import type { VerdictWord } from '@slabwright/core';

export type StepVerdict = VerdictWord | 'not yet';

const CLASS: Readonly<Record<StepVerdict, string>> = {
  go: 'go',
  caution: 'care',
  stop: 'stop',
  'not known': 'unknown',
  'not yet': 'yet',
};

/** Solid shapes cut by a way through: open, half open, barred. The word always stands beside it. */
function Shape({ verdict }: { readonly verdict: StepVerdict }) {
  switch (verdict) {
    case 'go':
      return <path d="M10.3 1.1a11 11 0 0 0 0 21.8zM13.7 1.1a11 11 0 0 1 0 21.8z" />;
    case 'caution':
      return <path d="M12 1 23.4 22H13.7V11.5h-3.4V22H.6z" />;
    case 'stop':
      return <path fillRule="evenodd" d="M1.5 1.5h21v21h-21zM5 10.1v3.8h14v-3.8z" />;
    case 'not known':
      return (
        <>
          <path d="M2.4 2.4h19.2v19.2H2.4z" />
          <path d="M8.6 9.4a3.4 3.4 0 1 1 5.4 2.7c-1.4 1-2 1.6-2 2.9M12 17v2.2" />
        </>
      );
    case 'not yet':
      return <circle cx="12" cy="12" r="9.4" />;
  }
}

export function VerdictMark({ verdict, size = 16 }: { readonly verdict: StepVerdict; readonly size?: number }) {
  return (
    <svg className={`mark ${CLASS[verdict]}`} width={size} height={size} viewBox="0 0 24 24" aria-hidden="true">
      <Shape verdict={verdict} />
    </svg>
  );
}

export const verdictClass = (verdict: StepVerdict): string => CLASS[verdict];
