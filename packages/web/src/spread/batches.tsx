import { useStep } from '../steps/step-view.tsx';
import { clockText } from '../when.ts';
import { WorkingLink } from '../working/working-link.tsx';
import type { Coat } from './coats.ts';
import { weightOf } from './moments.ts';
import { lookAt } from './store.ts';
import { words } from './words.ts';

const w = words.table;

/** A batch a pour: when to mix, when it is spread, by when it must be down, what goes in and where it ends. */
export function Batches({ coat }: { readonly coat: Coat }) {
  const { voice } = useStep();
  return (
    <section className="batches">
      <h3>{w.title}</h3>
      <ol>
        {coat.pours.map((pour) => {
          const bail = coat.bailOuts.find((one) => one.pour === pour.pour);
          const seams = coat.seams.filter(({ pours }) => pours.at(-1) === pour.pour);
          return (
            <li key={pour.pour}>
              <button type="button" className="pour-number" onClick={() => lookAt({ at: Date.parse(pour.start) })}>
                <span className="unseen">{words.pour('')}</span>
                {pour.pour}
              </button>
              <dl className="times">
                <Time name={w.mix} text={clockText(pour.mixFrom)} />
                <Time name={w.spread} text={`${clockText(pour.start)}–${clockText(pour.end)}`} />
                <Time name={w.by} text={clockText(pour.placeBy)} />
              </dl>
              <div className="about">
                <p>
                  <WorkingLink id={pour.volume} /> {w.covers} <WorkingLink id={pour.area} />
                </p>
                <p>
                  {pour.parts.map(({ component, name, volume, mass }) => (
                    <span key={component} className="part">
                      {name} <WorkingLink id={volume} />
                      {mass ? (
                        <>
                          {' '}
                          (<WorkingLink id={mass} />)
                        </>
                      ) : null}
                    </span>
                  ))}
                  {pour.thinner ? (
                    <span className="part">
                      {w.thinner} <WorkingLink id={pour.thinner} />
                    </span>
                  ) : null}
                </p>
                <p>{`${w.ends} ${voice.say(pour.ends)}`}</p>
                {seams.map((seam) => (
                  <p key={seam.pours.join('-')} className="quiet">
                    {`${words.seams.of(seam.pours.join('–'))}: `}
                    <WorkingLink id={seam.share} /> {words.seams.used},{' '}
                    {words.seams[weightOf(voice.entry(seam.share).value ?? 0)]}
                  </p>
                ))}
                {pour.spare ? <p className="quiet">{w.spare(voice.show(pour.spare))}</p> : null}
                {bail ? (
                  <p className="quiet">
                    {`${w.instead}: ${w.bail(clockText(bail.at))}, `}
                    {(voice.entry(bail.tape).value ?? 0) > 0 ? (
                      <>
                        {w.tape(bail.joints)} <WorkingLink id={bail.tape} />
                      </>
                    ) : (
                      w.noTape(bail.joints)
                    )}
                  </p>
                ) : null}
              </div>
            </li>
          );
        })}
      </ol>
    </section>
  );
}

function Time({ name, text }: { readonly name: string; readonly text: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{text}</dd>
    </div>
  );
}
