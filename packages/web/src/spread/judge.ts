import { formatQuantity, type Kind, type Reader, spread } from '@slabwright/core';
import type { JudgedOrder, PourAsked } from './api.ts';
import { words } from './words.ts';

type Said = Readonly<Record<string, string>>;

/** What the checker says of an order, in the reader's units; one sentence for each kind of break in a pour. */
export const judged = (question: spread.SpreadCase, solution: spread.SpreadSolution, reader: Reader): JudgedOrder =>
  told(spread.checkSequence(question, solution, 'clipped'), reader);

/** Pours drawn as outlines, or as the plan has them while they stand as planned, judged; what has to be mended in the drawing first is told the same way. */
export function judgedOutlines(
  problem: spread.SpreadProblem,
  pours: readonly PourAsked[],
  planned: spread.SpreadSolution['pours'],
  reader: Reader,
): JudgedOrder {
  const found = spread.judgeOutlines(
    problem,
    pours.map(({ ring, planned: number }) => {
      const own = planned.find(({ pour }) => pour === number);
      return own ? { ring, cells: own.cells } : { ring };
    }),
  );
  if (found.kind === 'judged') return told({ ...found.report, ok: found.ok, breaks: found.breaks }, reader);
  return {
    ok: false,
    breaks: found.issues.map(({ code, path }) => {
      const pour = Number(/^pours\.(\d+)/.exec(path)?.[1] ?? 0) + 1;
      return { text: words.breaks(code, pour, {}), pour };
    }),
    figures: [],
  };
}

function told(report: spread.SequenceReport, { units: system, locale }: Reader): JudgedOrder {
  const show = (value: number, unit: 'm' | 'm²' | 'm³' | 's', kind: Kind): string =>
    formatQuantity(value, unit, { system, locale, kind }).text;
  const figuresOf = (figures: Readonly<Record<string, number>>): Said =>
    Object.fromEntries(
      Object.entries(figures).map(([name, value]) => [
        name,
        /Min$/.test(name)
          ? show(value * 60, 's', 'duration')
          : /M$/.test(name)
            ? show(value, 'm', 'length')
            : name === 'm2'
              ? show(value, 'm²', 'area')
              : /litres|L$/.test(name)
                ? show(value / 1000, 'm³', 'volume')
                : `${value}`,
      ]),
    );
  const first = new Map<string, (typeof report.breaks)[number]>();
  for (const one of report.breaks) {
    const key = `${one.code} ${one.pour ?? ''}`;
    if (!first.has(key)) first.set(key, one);
  }
  const { breaks: say, judged: head } = words;
  return {
    ok: report.ok,
    breaks: [...first.values()].map(({ code, pour, at, figures }) => ({
      text: say(code, pour, figuresOf(figures)),
      ...(pour === undefined ? {} : { pour }),
      ...(at ? { at } : {}),
    })),
    figures: Number.isFinite(report.minutes)
      ? [
          [head.age, show(report.maxAgeMin * 60, 's', 'duration')],
          [head.takes, show(report.minutes * 60, 's', 'duration')],
          [head.walk, show(report.walkM, 'm', 'length')],
        ]
      : [],
  };
}
