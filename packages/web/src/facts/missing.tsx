import type { StepBase } from '@slabwright/core';
import { useVoice } from '../job/job-context.tsx';
import { words } from '../words.ts';

/** A step that lacks a fact says which, and what it would change. */
export function MissingFacts({ step }: { readonly step: StepBase }) {
  const voice = useVoice();
  if (step.missing.length === 0) return null;
  return (
    <section className="missing">
      <h3>{words.missing.title}</h3>
      <ul>
        {step.missing.map(({ path, fact, changes, meanwhile }) => (
          <li key={`${path}-${fact.code}-${fact.names?.layer ?? ''}`} data-path={path}>
            <b>{voice.say(fact)}</b>
            <span>
              {voice.say(changes)} <i>({words.missing[meanwhile]})</i>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

export function Notes({ step }: { readonly step: StepBase }) {
  const voice = useVoice();
  const notes = [...new Set(step.notes.map((note) => voice.say(note)))];
  if (notes.length === 0) return null;
  return (
    <section className="notes">
      <h3>{words.notes}</h3>
      <ul>
        {notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
    </section>
  );
}
