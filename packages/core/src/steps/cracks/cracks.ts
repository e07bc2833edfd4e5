import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { type Reason, verdictOf } from '../../kernel/verdict.ts';
import type { OptionContext } from '../context.ts';
import type { CrackPlan, CracksPlan, SitePlan, SurveyPlan } from '../results.ts';
import { onlyElongation, shownBy } from './bridging.ts';
import { withFiller } from './filler.ts';
import { judgeArea } from './judge.ts';
import { seasonOf } from './season.ts';

/**
 * How far each crack and joint opens, what that asks of a film, and what is done with it. A moving joint is bridged
 * only by a coat that was shown to bear its opening as cold as the slab gets; else it is honoured.
 */
export function cracks(ctx: OptionContext, surveyed: SurveyPlan, trace: Trace, site?: SitePlan): CracksPlan {
  const wanted = new Set(ctx.option.areas);
  const areas = surveyed.areas.filter(({ id, cracks, joints }) => wanted.has(id) && cracks.length + joints.length > 0);
  if (areas.length === 0) return { verdict: verdictOf([]), missing: [], notes: [], cracks: [] };
  const season = seasonOf(ctx, surveyed, trace, site);
  const around = { ctx, surveyed, season, shown: shownBy(ctx, trace) };
  const judged = areas.map((area) => ({
    area,
    lines: judgeArea(around, area, trace).map((line) => withFiller(line, trace)),
  }));
  const lines = judged.flatMap((one) => one.lines);
  const moving = lines.some(({ state }) => state !== 'dormant');
  return {
    verdict: verdictOf(
      judged.flatMap(({ area, lines: own }) => [
        ...own.flatMap((line) => reasonsOf(ctx, line, area.name)),
        ...coatedOver(own, area.name),
      ]),
      ctx.job.overrides,
    ),
    missing: moving ? season.missing : [],
    notes: [
      ...judged.flatMap((one) => winterNotes(one.lines.filter((line) => !isCoatedOver(line)))),
      ...judged.flatMap((one) => classNote(one.lines)),
      ...lines.flatMap(notesOf),
      ...(moving
        ? onlyElongation(ctx).map((product) => ({ code: 'cracks-elongation-ranks-nothing', names: { product } }))
        : []),
    ],
    cracks: lines,
  };
}

/** The first winter of an area: lines that show the same are told together, with the one that opens furthest. */
function winterNotes(lines: readonly CrackPlan[]): readonly Said[] {
  const alike = new Map<string, CrackPlan[]>();
  for (const line of lines) {
    const key = `${line.winter.code} ${line.kind}`;
    alike.set(key, [...(alike.get(key) ?? []), line]);
  }
  const size = ({ season, unseen }: CrackPlan): number => (season ?? unseen)?.value ?? 0;
  return [...alike.values()].map((group) => {
    const most = group.reduce((wide, one) => (size(one) > size(wide) ? one : wide));
    return { ...most.winter, names: { ...most.winter.names, line: group.map(({ id }) => id).join(', ') } };
  });
}

/** What is wrong with one line alone. */
function reasonsOf(ctx: OptionContext, line: CrackPlan, area: string): readonly Reason[] {
  const names = { line: line.id, area };
  const reasons: Reason[] = [];
  const drawn = ctx.job.areas.find(({ id }) => id === line.area)?.cracks?.find(({ id }) => id === line.id);
  if (line.from === 'two readings' && line.state === 'moving' && drawn?.moves === 'no')
    reasons.push({ code: 'cracks-readings-against-word', verdict: 'caution', names });
  if (line.state === 'not known') {
    const lift = { code: 'cracks-read-again' };
    reasons.push(
      line.season
        ? { code: 'cracks-may-move', verdict: 'caution', figures: { opening: line.season.id }, names, lift }
        : { code: 'cracks-may-move-unsized', verdict: 'caution', names, lift },
    );
  }
  if (line.bridges.answer === 'not known' && line.kind !== 'isolation' && line.bridges.width && line.bridges.at) {
    const shown = { width: line.bridges.width.id, at: line.bridges.at.id };
    reasons.push({ code: 'cracks-bridged-if-no-colder', verdict: 'caution', figures: shown, names });
  }
  return reasons;
}

/** A line that should be honoured, but which somebody chose to fill and coat over. */
const isCoatedOver = (line: CrackPlan): boolean => line.planned === 'filled and coated over';

/** The joints of an area that the plan coats over, in one sentence with the widest opening. */
function coatedOver(lines: readonly CrackPlan[], area: string): readonly Reason[] {
  const joints = lines.filter(isCoatedOver);
  if (joints.length === 0) return [];
  const names = { lines: joints.map(({ id }) => id).join(', '), area };
  const lift = { code: 'cracks-joints-coated-over-lift' };
  const opening = widest(joints);
  return opening
    ? [{ code: 'cracks-joints-coated-over', verdict: 'caution', figures: { opening: opening.id }, names, lift }]
    : [{ code: 'cracks-joints-coated-over-unsized', verdict: 'caution', names, lift }];
}

const widest = (lines: readonly CrackPlan[]): CrackPlan['season'] =>
  lines
    .flatMap(({ season }) => season ?? [])
    .reduce<CrackPlan['season']>((most, one) => (most && most.value >= one.value ? most : one), undefined);

/** What the lines of an area ask of a film that crosses them: the one that opens furthest says it for all. */
function classNote(lines: readonly CrackPlan[]): readonly Said[] {
  const crossed = lines.filter(({ state, kind }) => state !== 'dormant' && kind !== 'isolation');
  const most = crossed.reduce<CrackPlan | undefined>(
    (wide, one) => (one.toBear && (!wide?.toBear || one.toBear.value > wide.toBear.value) ? one : wide),
    undefined,
  );
  if (!most?.toBear || !most.classNeeded) return [];
  const needed = className(most.classNeeded);
  const daily = className(most.classNeededByDay ?? 'not known');
  return [
    { code: 'cracks-class-needed', figures: { toBear: most.toBear.id }, names: { line: most.id, needed, daily } },
  ];
}

/** Films over a free length, where one was entered. */
function notesOf({ id, toBear, freeLength, strain }: CrackPlan): readonly Said[] {
  const names = { line: id };
  if (strain && freeLength)
    return [{ code: 'cracks-strain', figures: { strain: strain.id, freeLength: freeLength.id }, names }];
  return freeLength && toBear ? [{ code: 'cracks-strain-undefined', names }] : [];
}

/** A class is data; the words for none, beyond all and not known are keys. */
const className = (needed: string): string =>
  /^[AB]\d/.test(needed) ? needed : `@cracks-class-${needed.replaceAll(' ', '-')}`;
