import type { Verdict } from '@slabwright/core';
import { useVoice } from '../job/job-context.tsx';
import { type StepVerdict, VerdictMark, verdictClass } from '../marks/verdict-mark.tsx';
import { words } from '../words.ts';

/** The verdict of a step: mark, word, what and why; then what would lift it, and what else to watch. */
export function VerdictBlock({ verdict, conditional }: { readonly verdict: Verdict; readonly conditional?: boolean }) {
  const voice = useVoice();
  const [first, ...rest] = verdict.reasons;
  const lifts = verdict.reasons.filter(({ lift }) => lift);
  return (
    <>
      <VerdictHead word={verdict.word}>
        {first ? <p>{voice.say(first)}</p> : <p>{words.verdictBlock.nothing}</p>}
        {verdict.overrides?.map(({ code, by, on, why }) => (
          <p key={code}>
            <b>{words.verdictBlock.overridden(by, on, why)}</b>
          </p>
        ))}
        {conditional ? <p>{words.verdictBlock.conditional}</p> : null}
      </VerdictHead>
      {lifts.length > 0 ? (
        <section className="ways">
          <h3>{words.verdictBlock.lift}</h3>
          <ul>
            {lifts.map(({ code, lift, names }, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: reasons have no id and never change order in one plan
              <li key={`${code}-${names?.layer ?? ''}-${index}`}>{lift ? voice.say(lift) : null}</li>
            ))}
          </ul>
        </section>
      ) : null}
      {rest.length > 0 ? (
        <section className="reasons">
          <h3>{words.verdictBlock.watch}</h3>
          <ul>
            {rest.map((reason, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: reasons have no id and never change order in one plan
              <li key={`${reason.code}-${index}`}>
                <VerdictMark verdict={reason.verdict} />
                <span>
                  <b className="unseen">{words.verdict[reason.verdict]}: </b>
                  {voice.say(reason)}
                </span>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
    </>
  );
}

export function VerdictHead({ word, children }: { readonly word: StepVerdict; readonly children?: React.ReactNode }) {
  return (
    <div className={`verdict ${verdictClass(word)}`}>
      <VerdictMark verdict={word} size={30} />
      <strong>{words.headline[word]}</strong>
      {children}
    </div>
  );
}
