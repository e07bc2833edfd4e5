import type { Issue } from '../../kernel/issue.ts';
import type { Built } from './build.ts';
import type { Place } from './series.ts';

/** What the shell lends the core so that it can ask: nothing is asked until the user has allowed it. */
export interface Fetching {
  /** Gives the text of an answer, or throws with the reason. The shell adds the identification the services ask for. */
  readonly fetchText: (url: string) => Promise<string>;
}

/** One public forecast service: which addresses to ask, in turn, and how to read what comes back. */
export interface ForecastService {
  /** Key used in `source.name`. */
  readonly name: string;
  /** Key of its terms in the bibliography. */
  readonly terms: string;
  /** First address to ask for a place; the place is rounded to 0.01° inside. */
  readonly firstUrl: (place: Place) => string;
  /** Second address named by the first answer, where the service works in two steps. */
  readonly nextUrl?: (answer: string) => { readonly url?: string; readonly issues: readonly Issue[] };
  readonly read: (answer: string, place: Place) => Built;
}

/** Whether the user has allowed the site's rounded place to leave the machine. Off until they say so. */
export interface AskingConsent {
  readonly sendPlace: boolean;
}

/**
 * Asks a service for the weather of a place. Without consent nothing is sent.
 *
 * Failures of the network come back as issues: a plan without weather is still a plan.
 */
export const askForecast = async (
  service: ForecastService,
  place: Place,
  consent: AskingConsent,
  { fetchText }: Fetching,
): Promise<Built> => {
  const path = ['weather'];
  if (!consent.sendPlace) return { issues: [{ code: 'weather-asking-not-allowed', path }] };
  const fetched = async (url: string): Promise<{ text?: string; issues: readonly Issue[] }> => {
    try {
      return { text: await fetchText(url), issues: [] };
    } catch (trouble) {
      const reason = trouble instanceof Error ? trouble.message : String(trouble);
      return { issues: [{ code: 'weather-service-unreachable', path, names: { service: service.name, reason } }] };
    }
  };
  let answer = await fetched(service.firstUrl(place));
  if (answer.text !== undefined && service.nextUrl !== undefined) {
    const next = service.nextUrl(answer.text);
    if (next.url === undefined) return { issues: next.issues };
    answer = await fetched(next.url);
  }
  return answer.text === undefined ? { issues: answer.issues } : service.read(answer.text, place);
};
