import type { Verdict as VerdictResult } from '@slabwright/core';
import type { ReactNode } from 'react';
import { useVoice } from '../job/job-context.tsx';
import { type StepVerdict, VerdictMark, verdictClass } from '../marks/verdict-mark.tsx';
import { words } from '../words.ts';

interface VerdictProps {
  readonly verdict: VerdictResult;
}

/** Mark, word, what and why. The worst reason speaks; the others follow further down. */
export function Verdict({ verdict }: VerdictProps) {
  const voice = useVoice();
  const [first] = verdict.reasons;
  return (
    <VerdictHead word={verdict.word}>
      <p>{first ? voice.say(first) : words.verdictBlock.nothing}</p>
      {verdict.overrides?.map(({ code, by, on, why }) => (
        <p key={code}>
          <b>{words.verdictBlock.overridden(by, on, why)}</b>
        </p>
      ))}
    </VerdictHead>
  );
}

export function VerdictHead({ word, children }: { readonly word: StepVerdict; readonly children?: ReactNode }) {
  return (
    <div className={`verdict ${verdictClass(word)}`}>
      <VerdictMark verdict={word} size={30} />
      <strong>{words.headline[word]}</strong>
      {children}
    </div>
  );
}

/** What would lift the verdict, each reason its own way. */
export function Ways({ verdict }: VerdictProps) {
  const voice = useVoice();
  const ways = [...new Set(verdict.reasons.flatMap(({ lift }) => (lift ? [voice.say(lift)] : [])))];
  if (ways.length === 0) return null;
  return (
    <section className="ways">
      <h3>{words.verdictBlock.lift}</h3>
      <ul>
        {ways.map((way) => (
          <li key={way}>{way}</li>
        ))}
      </ul>
    </section>
  );
}

/** The reasons behind the first. */
export function Watch({ verdict }: VerdictProps) {
  const voice = useVoice();
  const rest = verdict.reasons.slice(1).map((reason) => ({ word: reason.verdict, text: voice.say(reason) }));
  if (rest.length === 0) return null;
  return <ReasonList title={words.verdictBlock.watch} reasons={rest} />;
}

interface ReasonListProps {
  readonly title: string;
  readonly reasons: readonly { readonly word: StepVerdict; readonly text: string }[];
}

export function ReasonList({ title, reasons }: ReasonListProps) {
  return (
    <section className="reasons">
      <h3>{title}</h3>
      <ul>
        {reasons.map(({ word, text }) => (
          <li key={text}>
            <VerdictMark verdict={word} />
            <span>
              <span className="unseen">{words.verdict[word]}: </span>
              {text}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
