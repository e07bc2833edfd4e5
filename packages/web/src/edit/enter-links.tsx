import { Link } from 'wouter';
import { useJob } from '../job/job-context.tsx';
import { words as screenWords } from '../words.ts';
import { words } from './words.ts';

const PARTS: Readonly<Record<string, readonly (readonly [string, string])[]>> = {
  survey: [
    ['floor', words.draw],
    ['building', words.fill],
  ],
  system: [
    ['options', words.chooseOptions],
    ['goods', words.otherCatalogue],
  ],
  price: [['goods', words.choosePrices]],
  hours: [
    ['climate', 'Enter air and slab'],
    ['weather', screenWords.weather.enter],
  ],
};

/** Where to enter what the step in hand stands on. */
export function EnterLinks({ step }: { readonly step: string }) {
  const { id, document } = useJob();
  const parts = PARTS[step] ?? [];
  return (
    <p className="enter-links">
      {parts.map(([section, title]) => (
        <Link className="press" key={section} href={`/job/${id}/${step}/enter/${section}`}>
          {title}
        </Link>
      ))}
      {step === 'system' ? (
        <Link className="press" href={`/catalogue/${document.catalogue}`}>
          {words.catalogue}
        </Link>
      ) : null}
      {step === 'price' && document.priceBook ? (
        <Link className="press" href={`/prices/${document.priceBook}/with/${document.catalogue}`}>
          {words.prices}
        </Link>
      ) : null}
    </p>
  );
}
