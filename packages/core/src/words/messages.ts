import calendar from './en/calendar.json' with { type: 'json' };
import check from './en/check.json' with { type: 'json' };
import climate from './en/climate.json' with { type: 'json' };
import cracks from './en/cracks.json' with { type: 'json' };
import day from './en/day.json' with { type: 'json' };
import evidence from './en/evidence.json' with { type: 'json' };
import file from './en/file.json' with { type: 'json' };
import fits from './en/fits.json' with { type: 'json' };
import governs from './en/governs.json' with { type: 'json' };
import hours from './en/hours.json' with { type: 'json' };
import names from './en/names.json' with { type: 'json' };
import needs from './en/needs.json' with { type: 'json' };
import papers from './en/papers.json' with { type: 'json' };
import preparation from './en/preparation.json' with { type: 'json' };
import price from './en/price.json' with { type: 'json' };
import quantities from './en/quantities.json' with { type: 'json' };
import refusals from './en/refusals.json' with { type: 'json' };
import schedule from './en/schedule.json' with { type: 'json' };
import server from './en/server.json' with { type: 'json' };
import spread from './en/spread.json' with { type: 'json' };
import survey from './en/survey.json' with { type: 'json' };
import system from './en/system.json' with { type: 'json' };
import thinner from './en/thinner.json' with { type: 'json' };
import esCalendar from './es/calendar.json' with { type: 'json' };
import esClimate from './es/climate.json' with { type: 'json' };
import esDay from './es/day.json' with { type: 'json' };
import esHours from './es/hours.json' with { type: 'json' };
import esNames from './es/names.json' with { type: 'json' };
import esPapers from './es/papers.json' with { type: 'json' };
import esPreparation from './es/preparation.json' with { type: 'json' };
import esSpread from './es/spread.json' with { type: 'json' };
import esSurvey from './es/survey.json' with { type: 'json' };
import esSystem from './es/system.json' with { type: 'json' };
import esThinner from './es/thinner.json' with { type: 'json' };

export const LANGUAGES = ['en', 'es'] as const;
export type Language = (typeof LANGUAGES)[number];

type Messages = Readonly<Record<string, string>>;

/** Merges message files; the same code in two of them is a mistake of ours. */
function merge(files: readonly Messages[]): ReadonlyMap<string, string> {
  const all = new Map<string, string>();
  for (const file of files) {
    for (const [code, text] of Object.entries(file)) {
      if (all.has(code)) throw new Error(`the message ${code} stands in two files`);
      all.set(code, text);
    }
  }
  return all;
}

/** English is complete; Spanish covers the crew sheet and the safety sheet. */
export const MESSAGES: Readonly<Record<Language, ReadonlyMap<string, string>>> = {
  en: merge([
    calendar,
    check,
    climate,
    cracks,
    day,
    evidence,
    file,
    fits,
    governs,
    hours,
    names,
    needs,
    papers,
    preparation,
    price,
    quantities,
    refusals,
    schedule,
    server,
    spread,
    survey,
    system,
    thinner,
  ]),
  es: merge([
    esCalendar,
    esClimate,
    esDay,
    esHours,
    esNames,
    esPapers,
    esPreparation,
    esSpread,
    esSurvey,
    esSystem,
    esThinner,
  ]),
};
