import type { Area } from '../../drawing.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { type RoomFromTape, roomFromTape, squareCorner } from '../../science/shape/index.ts';
import { givenCount } from '../context.ts';
import { lengthErrorFromArea } from '../formulas/survey.ts';
import { cornersFromTape, tapedAreaError } from '../formulas/taped-room.ts';
import type { Outline } from './outline.ts';

type Tape = NonNullable<Area['tape']>;

/** Standard deviation of one tape reading where the job states none: a quarter inch. An assumption without a source. */
const ASSUMED_READING_ERROR = 0.00635;

export type TapedOutline =
  | {
      readonly ok: true;
      readonly outline: Outline;
      readonly reasons: readonly Reason[];
      readonly notes: readonly Said[];
    }
  | { readonly ok: false; readonly reason: Reason };

const between = (tape: Tape, from: number, to: number): string =>
  `${tape.corners[from] ?? '?'}–${tape.corners[to] ?? '?'}`;

/** The same room as the formulas compute, kept for what is said about it: which diagonal is missing, which is off. */
export function roomOf(tape: Tape): ReturnType<typeof roomFromTape> {
  const at = (name: string): number => tape.corners.indexOf(name);
  const distances = tape.measures.map(({ from, to, length, error }) => ({
    kind: 'distance' as const,
    from: at(from),
    to: at(to),
    length: length.value,
    deviation: (error ?? tape.error)?.value ?? ASSUMED_READING_ERROR,
  }));
  const square = (tape.rightAngles ?? []).map((corner) => squareCorner(at(corner)));
  return roomFromTape({ cornerCount: tape.corners.length, measures: [...distances, ...square] });
}

function saidAbout(area: Area, tape: Tape, room: RoomFromTape): { reasons: readonly Reason[]; notes: readonly Said[] } {
  const names = { area: area.name };
  const reasons: Reason[] = [];
  const notes: Said[] = [];
  if (room.beyondChance) {
    const suspects = room.suspects.flatMap((k) => {
      const measure = tape.measures[k];
      return measure ? [`${measure.from}–${measure.to}`] : [];
    });
    reasons.push({
      verdict: 'caution',
      code: suspects.length > 0 ? 'survey-tape-suspect' : 'survey-tape-disagrees',
      names: { ...names, measures: suspects.join(', ') },
      source: 'error-propagation',
      lift: { code: 'survey-tape-suspect-lift' },
    });
  }
  if (room.redundancy === 0) notes.push({ code: 'survey-tape-not-checked', names });
  if (tape.rightAngles?.length) {
    notes.push({ code: 'survey-tape-assumed-square', names: { ...names, corners: tape.rightAngles.join(', ') } });
  }
  return { reasons, notes };
}

/** Corners of a room measured by sides and diagonals, with the deviation of its area as the shared cause `tape`. */
export function outlineFromTape(trace: Trace, area: Area): TapedOutline | undefined {
  const tape = area.tape;
  if (!tape) return undefined;
  const names = { area: area.name };
  const taped = roomOf(tape);
  if (!taped.ok) {
    const { trouble } = taped;
    if (trouble.code === 'tape-room-is-loose') {
      const diagonals = trouble.diagonals.map(([from, to]) => between(tape, from, to)).join(', ');
      const lift = { code: 'survey-tape-loose-lift', names: { diagonals } };
      return { ok: false, reason: { verdict: 'not known', code: 'survey-tape-loose', names, lift } };
    }
    const lift = { code: 'survey-tape-suspect-lift' };
    return { ok: false, reason: { verdict: 'not known', code: 'survey-tape-does-not-close', names, lift } };
  }
  const count = (name: string, corner: string) =>
    givenCount(trace, name, tape.corners.indexOf(corner), 'reading', corner);
  const stated = tape.error !== undefined;
  const inputs = {
    cornerCount: givenCount(trace, 'tape.corners', tape.corners.length, 'reading'),
    from: tape.measures.map(({ from }, i) => count(`tape.${i}.from`, from)),
    to: tape.measures.map(({ to }, i) => count(`tape.${i}.to`, to)),
    lengths: tape.measures.map(({ length, from, to }, i) =>
      trace.given(`tape.${i}.length`, {
        value: length.value,
        unit: 'm',
        origin: 'reading',
        typed: length.typed,
        where: `${from}–${to}`,
        shows: 'length',
      }),
    ),
    deviations: tape.measures.map(({ error }, i) => {
      const field = error ?? tape.error;
      return trace.given(`tape.${i}.error`, {
        value: field?.value ?? ASSUMED_READING_ERROR,
        unit: 'm',
        origin: field ? 'reading' : 'assumed',
        ...(field ? { typed: field.typed } : { source: 'tape-assumption', says: 'survey-assumed-tape-error' }),
        shows: 'small-length',
      });
    }),
    squareCorners: (tape.rightAngles ?? []).map((corner, i) => count(`tape.square.${i}`, corner)),
  };
  const corners = trace.list('tape.found', cornersFromTape, inputs);
  const areaError = trace.figure('tape.area-error', tapedAreaError, inputs);
  const coordinate = (i: number, axis: 0 | 1) =>
    trace.given(`corner.${i}.${axis === 0 ? 'x' : 'y'}`, {
      value: corners.values[2 * i + axis] as number,
      unit: 'm',
      origin: 'reading',
      where: corners.id,
      shows: 'length',
    });
  const x = tape.corners.map((_, i) => coordinate(i, 0));
  const y = tape.corners.map((_, i) => coordinate(i, 1));
  const adjusted = trace.given('tape.area', {
    value: taped.room.area,
    unit: 'm²',
    origin: 'reading',
    where: corners.id,
    shows: 'area',
  });
  const tapeError = trace.figure('tape-error', lengthErrorFromArea, { areaError, area: adjusted });
  const points = x.map((px, i) => [px.value, (y[i] as (typeof y)[number]).value] as const);
  const assumed = !stated && tape.measures.some(({ error }) => error === undefined);
  return { ok: true, outline: { ring: { points, x, y }, tapeError, assumed }, ...saidAbout(area, tape, taped.room) };
}
