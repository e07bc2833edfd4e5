import { boxOf, distanceToSegment, insideRing, ringArea } from './geometry.ts';
import { handsOf } from './hands.ts';
import { PASSAGE_M } from './passage.ts';
import type { Point, SpreadCase, SpreadIssue } from './types.ts';

/** More squares than this are refused: a browser would stand still. */
export const MOST_SQUARES = 500_000;

/** What the user has to mend before anything can be planned; empty when there is nothing. */
export function checkCase(question: SpreadCase): SpreadIssue[] {
  return [...checkNumbers(question), ...checkTables(question), ...checkShapes(question), ...checkExits(question)];
}

type Range = readonly [number, number];

function checkNumbers(question: SpreadCase): SpreadIssue[] {
  const { crew, batch, clock } = question;
  const issues: SpreadIssue[] = [];
  const within = (path: string, value: number | undefined, [low, high]: Range, unit: string): void => {
    if (value === undefined || (value >= low && value <= high)) return;
    issues.push({ code: 'spread/out-of-range', path, value, limits: { low, high, unit } });
  };
  within('cellM', question.cellM, [0.1, 10], 'm');
  within('crew.people', crew.people, [1, 60], '1');
  within('crew.rateM2PerMinPerPerson', crew.rateM2PerMinPerPerson, [0.05, 50], 'm²/min');
  within('crew.laneM', crew.laneM, [0.1, 10], 'm');
  within('crew.walkMPerMin', crew.walkMPerMin, [5, 200], 'm/min');
  within('crew.cutters', crew.cutters, [0, 60], '1');
  within('crew.cutMPerMinPerPerson', crew.cutMPerMinPerPerson, [0.1, 100], 'm/min');
  within('crew.broadcasters', crew.broadcasters, [0, 60], '1');
  within('crew.broadcastM2PerMinPerPerson', crew.broadcastM2PerMinPerPerson, [0.1, 200], 'm²/min');
  within('batch.litres', batch.litres, [0.2, 2000], 'L');
  within('batch.litresPerM2', batch.litresPerM2, [0.02, 50], 'L/m²');
  within('batch.mixMin', batch.mixMin, [0, 120], 'min');
  within('batch.handoverMin', batch.handoverMin, [0, 60], 'min');
  within('clock.startMin', clock.startMin, [0, 2880], 'min');
  within('passageM', question.passageM, [0.2, 3], 'm');
  (batch.zones ?? []).forEach(({ factor }, k) => {
    within(`batch.zones.${k}.factor`, factor, [0.1, 20], '1');
  });
  const hands = handsOf(crew);
  if (hands.spreaders < 1 && crew.people >= 1) {
    const busy = (crew.dedicatedMixer ? 1 : 0) + (crew.cutters ?? 0) + (crew.broadcasters ?? 0);
    issues.push({ code: 'spread/nobody-spreads', path: 'crew.people', value: crew.people, limits: { low: busy + 1 } });
  }
  return issues;
}

function checkTables(question: SpreadCase): SpreadIssue[] {
  const issues: SpreadIssue[] = [];
  for (const name of ['workingMin', 'openMin'] as const) {
    const table = question.clock[name];
    if (table.length === 0) {
      issues.push({ code: 'spread/table-empty', path: `clock.${name}`, value: 0, limits: { low: 1 } });
    }
    table.forEach(([minute, value], k) => {
      if (!(value > 0 && value <= 1440)) {
        issues.push({
          code: 'spread/out-of-range',
          path: `clock.${name}.${k}.1`,
          value,
          limits: { low: 0.1, high: 1440, unit: 'min' },
        });
      }
      const before = table[k - 1]?.[0];
      if (!Number.isFinite(minute) || (before !== undefined && !(minute > before))) {
        issues.push({
          code: 'spread/table-not-rising',
          path: `clock.${name}.${k}.0`,
          value: minute,
          limits: { above: before ?? 0 },
        });
      }
    });
  }
  return issues;
}

function checkShapes(question: SpreadCase): SpreadIssue[] {
  const issues: SpreadIssue[] = [];
  const rings = [
    ['outline', question.outline] as const,
    ...question.holes.map((ring, k) => [`holes.${k}`, ring] as const),
    ...(question.done ?? []).map(({ ring }, k) => [`done.${k}.ring`, ring] as const),
    ...(question.batch.zones ?? []).map(({ poly }, k) => [`batch.zones.${k}.poly`, poly] as const),
  ];
  for (const [path, ring] of rings) {
    if (ring.some((p) => !p.every(Number.isFinite)) || ring.length < 3 || ringArea(ring) < 1e-6) {
      issues.push({ code: 'spread/no-area', path, value: ring.length, limits: { low: 3 } });
    }
  }
  if (issues.length > 0 || !(question.cellM > 0)) return issues;
  const [minX, minY, maxX, maxY] = boxOf(question.outline);
  const squares = Math.ceil((maxX - minX) / question.cellM) * Math.ceil((maxY - minY) / question.cellM);
  if (squares > MOST_SQUARES) {
    // the smallest lane that would do is the way out
    const lane = Math.sqrt(((maxX - minX) * (maxY - minY)) / MOST_SQUARES);
    issues.push({
      code: 'spread/too-many-squares',
      path: 'cellM',
      value: squares,
      limits: { high: MOST_SQUARES, lowestLane: Math.ceil(lane * 100) / 100 },
    });
  }
  return issues;
}

function checkExits(question: SpreadCase): SpreadIssue[] {
  const issues: SpreadIssue[] = [];
  const { exits, cellM } = question;
  if (exits.length === 0) issues.push({ code: 'spread/no-exit', path: 'exits', value: 0, limits: { low: 1 } });
  const needed = question.passageM ?? PASSAGE_M;
  exits.forEach(({ a, b }, k) => {
    const dx = b[0] - a[0];
    const dy = b[1] - a[1];
    const width = Math.sqrt(dx * dx + dy * dy);
    if (!(width >= needed - 1e-9)) {
      issues.push({
        code: 'spread/exit-too-narrow',
        path: `exits.${k}`,
        value: width,
        limits: { low: needed, unit: 'm' },
      });
    }
    const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const away = distanceToOutline(question, middle);
    if (away > cellM) {
      const inside = insideRing(middle[0], middle[1], question.outline);
      issues.push({
        code: inside ? 'spread/exit-inside-floor' : 'spread/exit-off-floor',
        path: `exits.${k}`,
        value: away,
        limits: { high: cellM, unit: 'm' },
      });
    }
  });
  if ('exit' in question.mixAt) {
    if (exits.length > 0 && !(question.mixAt.exit < exits.length)) {
      const limits = { low: 0, high: exits.length - 1 };
      issues.push({ code: 'spread/no-such-exit', path: 'mixAt.exit', value: question.mixAt.exit, limits });
    }
  } else {
    const [x, y] = question.mixAt.point;
    const onFloor = insideRing(x, y, question.outline) && !question.holes.some((hole) => insideRing(x, y, hole));
    if (!onFloor)
      issues.push({ code: 'spread/station-off-floor', path: 'mixAt.point', value: `${x}, ${y}`, limits: {} });
  }
  return issues;
}

function distanceToOutline(question: SpreadCase, [x, y]: Point): number {
  let nearest = Infinity;
  for (const ring of [question.outline, ...question.holes, ...(question.done ?? []).map((part) => part.ring)]) {
    for (let k = 0; k < ring.length; k++) {
      nearest = Math.min(nearest, distanceToSegment(x, y, ring[k] as Point, ring[(k + 1) % ring.length] as Point));
    }
  }
  return nearest;
}
