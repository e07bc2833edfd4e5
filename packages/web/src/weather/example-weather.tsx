import { useState } from 'react';
import { useJob } from '../job/job-context.tsx';
import { exampleWeather, hasExampleWeather } from '../keep/examples.ts';
import { keepWeather } from '../keep/weather.ts';
import { words } from '../words.ts';

const w = words.weather;

/** Examples put here by an earlier version have no weather; the one they have now is offered, never put in unasked. */
export function ExampleWeather() {
  const { id, document, device, changeDocument } = useJob();
  const [failed, setFailed] = useState<string | null>(null);
  if (!document.example || document.weather !== undefined || !hasExampleWeather(id)) return null;
  const take = async (): Promise<void> => {
    try {
      const weather = await exampleWeather(id);
      if (weather === null) return;
      const kept = await keepWeather(device.store, weather);
      changeDocument((draft) => {
        (draft as { weather?: string }).weather = kept;
      });
    } catch (trouble) {
      setFailed(w.failed(String(trouble)));
    }
  };
  return (
    <div className="making">
      <p>{w.example}</p>
      <button type="button" className="press" onClick={() => void take()}>
        {w.takeExample}
      </button>
      {failed ? (
        <p className="wrong" role="alert">
          {failed}
        </p>
      ) : null}
    </div>
  );
}
