import { StoreError } from '@slabwright/store';
import { useState } from 'react';
import { useJob } from '../job/job-context.tsx';
import { keepWeather } from '../keep/weather.ts';
import { words } from '../words.ts';
import { planWorker } from '../worker/client.ts';
import type { WeatherAsked } from '../worker/weather-api.ts';

/** What came of giving weather: kept with the job, a table whose columns must be named, or why it could not be used. */
export interface Given {
  readonly taken: boolean;
  readonly issues: readonly string[];
  readonly headings: readonly string[];
}

export interface Giving {
  readonly busy: boolean;
  readonly given: Given | null;
  give(asked: WeatherAsked): Promise<void>;
}

/** Makes a weather file out of what was given and plans the job with it. Undo brings the weather before back. */
export function useGiving(): Giving {
  const { device, document, changeDocument } = useJob();
  const [busy, setBusy] = useState(false);
  const [given, setGiven] = useState<Given | null>(null);
  const give = async (asked: WeatherAsked): Promise<void> => {
    setBusy(true);
    try {
      const now = document.asOf ? Date.parse(document.asOf) : Date.now();
      const { file, issues, headings } = await planWorker().weather(asked, now);
      if (file !== null) {
        const id = await keepWeather(device.store, file as never);
        changeDocument((draft) => {
          (draft as { weather?: string }).weather = id;
        });
      }
      setGiven({ taken: file !== null, issues, headings });
    } catch (trouble) {
      const why = trouble instanceof StoreError || trouble instanceof Error ? trouble.message : String(trouble);
      setGiven({ taken: false, issues: [words.weather.failed(why)], headings: [] });
    } finally {
      setBusy(false);
    }
  };
  return { busy, given, give };
}
