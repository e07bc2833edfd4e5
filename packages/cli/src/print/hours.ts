import { answered, type OptionPlan, showValue, type Voice } from '@slabwright/core';
import type { Planned } from '../planned.ts';
import type { Terminal } from '../terminal.ts';
import { columns, indent, paint, wrap } from './lines.ts';

const WORDS = { go: 'open', caution: 'with care', stop: 'shut', 'not known': 'not known' } as const;

const day = (instant: string): string => instant.slice(0, 10);
const clock = (instant: string): string => instant.slice(11, 16);
const moment = (instant: string): string => `${day(instant)} ${clock(instant)}`;

/** Hours told: from the evening before the first start to the evening after the last, at most. */
const MOST_ROWS = 36;
const HOUR = 3_600_000;

type Site = Extract<NonNullable<Planned['plan']['site']>, { slab: unknown }>;
type Day = Extract<NonNullable<OptionPlan['day']>, { coats: unknown }>;

/** The day in rows of hours, then windows, schedule and return to service. */
export function printHours(done: Planned, option: OptionPlan, terminal: Terminal): string {
  const { plan, voice } = done;
  const width = Math.min(terminal.width, 110);
  const lines: string[] = [`${paint(terminal, 'bold', plan.title)}   ${option.name}`];
  const head = (text: string): void => {
    lines.push('', paint(terminal, 'bold', text));
  };
  if (plan.site && answered(plan.site)) {
    head('Hours');
    lines.push(...hourRows(done, option));
  } else if (plan.site) {
    lines.push(...plan.site.verdict.reasons.map((reason) => voice.say(reason)), ...plan.site.notes.map(voice.say));
  }
  const { site } = plan;
  if (site && answered(site)) {
    head('Weather');
    lines.push(...weatherLines(site, voice, width));
  }
  const lit = option.day && answered(option.day) ? option.day : undefined;
  if (lit) {
    head('May lay');
    for (const coat of lit.coats) lines.push(...windowLines(coat, voice, terminal, width));
  }
  if (answered(option.schedule) && option.schedule.tasks.length > 0) {
    head('Schedule');
    lines.push(...scheduleRows(option, voice));
  }
  if (lit) {
    head('Return to service');
    lines.push(...serviceLines(lit, voice, width));
  }
  const { hours } = option;
  const reasons = hours.verdict.reasons;
  const notes = lit?.notes ?? [];
  if (reasons.length + notes.length > 0) {
    head('Watch');
    for (const reason of reasons)
      lines.push(
        ...wrap(`${voice.say(reason)}${reason.lift ? ` ${voice.say(reason.lift)}` : ''}`, width - 2).map(indent(2)),
      );
    for (const note of notes) lines.push(...wrap(`· ${voice.say(note)}`, width - 2).map(indent(2)));
  }
  return `${lines.join('\n')}\n`;
}

function valuesOf(done: Planned, id: string): readonly number[] {
  const entry = done.plan.entries[id];
  if (entry?.kind !== 'series') throw new Error(`${id} is no series`);
  return entry.values;
}

/** One row an hour: slab, dew point, air and margin, with their bands where they have them. */
function hourRows(done: Planned, option: OptionPlan): string[] {
  const { plan, voice } = done;
  const { site } = plan;
  if (!site || !answered(site)) return [];
  const slab = plan.entries[site.slab];
  if (slab?.kind !== 'series' || !slab.from || !slab.step) return [];
  const from = Date.parse(slab.from);
  const perHour = Math.round(3600 / slab.step);
  const starts = (option.day && answered(option.day) ? option.day.coats : []).flatMap(({ start }) =>
    start ? [Date.parse(start.at)] : [],
  );
  const first = Math.max(from, Math.min(...starts, Number.POSITIVE_INFINITY) - 8 * HOUR);
  const begin = Number.isFinite(first) ? first : from;
  const offset = slab.from.slice(19);
  const shift =
    offset === 'Z'
      ? 0
      : (offset.startsWith('-') ? -1 : 1) * (Number(offset.slice(1, 3)) * 60 + Number(offset.slice(4)));
  const text = (values: readonly number[], i: number, unit: '°C' | 'K', shows: 'temperature' | 'difference'): string =>
    showValue(values[i] ?? 0, unit, voice.reader, { shows });
  const [dew, air, margin] = [site.dew, site.air, site.margin].map((id) => valuesOf(done, id));
  const least = plan.entries[site.margin];
  const low = least?.kind === 'series' ? least.low : undefined;
  const rows: string[][] = [['', 'slab', 'P10 to P90', 'dew point', 'air', 'margin', 'P10']];
  const step = Math.ceil((begin - from) / HOUR) * perHour;
  for (let i = step; i < slab.values.length && rows.length <= MOST_ROWS; i += perHour) {
    const at = new Date(from + (i / perHour) * HOUR + shift * 60_000).toISOString();
    rows.push([
      `${at.slice(5, 10)} ${at.slice(11, 16)}`,
      text(slab.values, i, '°C', 'temperature'),
      slab.low && slab.high
        ? `${text(slab.low, i, '°C', 'temperature')} – ${text(slab.high, i, '°C', 'temperature')}`
        : '',
      text(dew ?? [], i, '°C', 'temperature'),
      text(air ?? [], i, '°C', 'temperature'),
      text(margin ?? [], i, 'K', 'difference'),
      low ? text(low, i, 'K', 'difference') : '',
    ]);
  }
  return columns(rows, { indent: 2, right: [1, 2, 3, 4, 5, 6] });
}

/** Where the weather came from, and everything that is to be said of it. */
function weatherLines(site: Site, voice: Voice, width: number): string[] {
  const { source, kind, issued, place } = site.weather;
  const from = [source, kind, ...(place ? [place] : []), ...(issued ? [`issued ${moment(issued)}`] : [])].join(', ');
  return [from, ...site.notes.map((note) => voice.say(note))].flatMap((text) => wrap(text, width - 2).map(indent(2)));
}

function windowLines(coat: Day['coats'][number], voice: Voice, terminal: Terminal, width: number): string[] {
  const lines = [`  ${coat.name}  (laid in ${voice.show(coat.laying)})`];
  if (coat.start) {
    const { start } = coat;
    const margin =
      start.margin && start.marginAt ? `, least margin ${voice.show(start.margin)} at ${moment(start.marginAt)}` : '';
    lines.push(
      ...wrap(
        `${start.by} ${moment(start.at)}: ${WORDS[start.verdict.word]}, laid by ${clock(start.laid)}${margin}`,
        width - 4,
      ).map(indent(4)),
    );
    if (start.nearest) lines.push(`    nearest open start: ${moment(start.nearest)}`);
  }
  if (coat.best.length > 0) {
    const best = coat.best.map(({ at, word, margin }) => `${moment(at)} ${WORDS[word]}, margin ${voice.show(margin)}`);
    lines.push(...wrap(`best starts: ${best.join('; ')}`, width - 6).map(indent(4)));
  }
  for (const { from, until, word, limiting } of coat.starts) {
    const why = limiting ? `: ${voice.say(limiting)}${limiting.lift ? `; ${voice.say(limiting.lift)}` : ''}` : '';
    const end = day(from) === day(until) ? clock(until) : moment(until);
    lines.push(
      ...wrap(`${moment(from)} to ${end}  ${paint(terminal, word, WORDS[word])}${why}`, width - 6).map(indent(6)),
    );
  }
  return lines;
}

function scheduleRows({ schedule }: OptionPlan, voice: Voice): string[] {
  if (!answered(schedule)) return [];
  const rows = [
    ...schedule.tasks.map(({ from, until, who, work, layer }) => ({
      from,
      cells: [
        `${from.slice(5, 10)} ${clock(from)}`,
        clock(until),
        who,
        `${voice.word(`task-${work}`)}${layer ? `, ${layer}` : ''}`,
      ],
    })),
    ...schedule.waits.map(({ from, until, who, layer }) => ({
      from,
      cells: [`${from.slice(5, 10)} ${clock(from)}`, clock(until), who, layer ? `waits for ${layer}` : 'waits'],
    })),
  ].sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0));
  const total = schedule.waiting ? [`  waiting in all: ${voice.show(schedule.waiting)}`] : [];
  return [...columns([['from', 'to', 'hand', ''], ...rows.map(({ cells }) => cells)], { indent: 2 }), ...total];
}

function serviceLines(lit: Day, voice: Voice, width: number): string[] {
  const last = lit.coats.at(-1);
  const rows = (last?.milestones ?? []).map(({ what, last: span, holds }) => {
    const [condition] = holds;
    const band = span.high ? `${moment(span.low)} to ${moment(span.high)}` : `${moment(span.low)} or later`;
    return [what, moment(span.at), `(${band})`, condition ? voice.say(condition) : ''];
  });
  return [
    ...columns(rows, { indent: 2 }),
    ...lit.promises.flatMap(({ says, basis }) =>
      wrap(`${voice.say(says)} ${voice.say(basis)}`, width - 2).map(indent(2)),
    ),
  ];
}
