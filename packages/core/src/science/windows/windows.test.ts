import { describe, expect, test } from 'vitest';
import { cureLaw } from '../cure/law.ts';
import { placeChain } from './chain.ts';
import { type CoatToPlace, FIVE_FAHRENHEIT, THREE_KELVIN } from './coat.ts';
import type { Conditions } from './conditions.ts';
import { findWindows, nearestUsable, risingWayOut } from './search.ts';

const HOUR = 3_600_000;
/** Two days of marks from an hour-of-day law; what is not given is calm, dry and certain. */
const conditions = (
  laws: {
    readonly [K in 'surface' | 'margin' | 'breathing' | 'rain' | 'wind' | 'humidity']?: (hour: number) => number;
  },
  deviation = 0.3,
): Conditions => {
  const count = 2 * 288 + 1;
  const lay = (law: ((hour: number) => number) | undefined, otherwise: number): Float64Array =>
    Float64Array.from({ length: count }, (_, m) => law?.(((m * 5) / 60) % 24) ?? otherwise);
  return {
    from: 0,
    count,
    surface: lay(laws.surface, 18),
    surfaceDeviation: lay(undefined, deviation),
    air: lay(undefined, 20),
    humidity: lay(laws.humidity, 0.5),
    margin: lay(laws.margin, 8),
    marginDeviation: lay(undefined, deviation),
    breathing: lay(laws.breathing, 18),
    wind: lay(laws.wind, 1),
    rain: lay(laws.rain, 0),
    known: new Uint8Array(count).fill(1),
    rainKnown: new Uint8Array(count).fill(1),
    assumed: [],
  };
};
const coat: CoatToPlace = {
  laying: 3600,
  open: cureLaw(
    [
      { temperature: 10, time: 3600 },
      { temperature: 20, time: 1800 },
    ],
    'film',
  ),
  touch: cureLaw(
    [
      { temperature: 10, time: 8 * 3600 },
      { temperature: 20, time: 4 * 3600 },
    ],
    'film',
  ),
  sensitive: 6 * 3600,
  marginRule: THREE_KELVIN,
  slab: [10, 30],
  air: [8, 32],
  humidity: [undefined, 0.85],
  porous: false,
  risingStops: false,
  outdoors: false,
  prepared: 0,
};
const day = [{ from: 7 * HOUR, to: 17 * HOUR }];
const at = (found: ReturnType<typeof findWindows>, hour: number) => {
  const each = found.starts.find((start) => start.start === hour * HOUR);
  if (each === undefined) throw new Error(`no start at ${hour} h`);
  return each;
};
const search = (found: Conditions, changes: Partial<CoatToPlace> = {}, hours = day) =>
  findWindows(found, { ...coat, ...changes }, hours, 0, 24 * HOUR);

describe('dew margin', () => {
  test('go at the rule and above with P10 over 1 K; caution under it; stop under the rule', () => {
    expect(at(search(conditions({ margin: () => 3 }, 0.3)), 9).word).toBe('go');
    const wide = at(search(conditions({ margin: () => 3 }, 2)), 9);
    expect([wide.word, wide.limiting?.code]).toEqual(['caution', 'window-dew-margin-uncertain']);
    const narrow = at(search(conditions({ margin: () => 2.9 }, 0.3)), 9);
    expect([narrow.word, narrow.limiting?.code]).toEqual(['stop', 'window-dew-margin']);
    expect(narrow.limiting?.lift.by).toBeCloseTo(0.1, 9);
  });

  test('3 K and 5 °F are two rules', () => {
    const between = conditions({ margin: () => 2.9 }, 0.3);
    expect(at(search(between, { marginRule: FIVE_FAHRENHEIT }), 9).word).toBe('go');
    expect(at(search(between, { marginRule: THREE_KELVIN }), 9).word).toBe('stop');
  });

  test('the margin holds over the whole sensitive time, not only at the start', () => {
    const evening = conditions({ margin: (h) => (h >= 16 && h < 22 ? 1 : 8) });
    const found = search(evening);
    expect(at(found, 8).word).toBe('go');
    expect(at(found, 12).word).toBe('stop');
    expect(nearestUsable(found, 12 * HOUR) as number).toBeLessThan(12 * HOUR);
  });
});

describe('outgassing', () => {
  const warming = conditions({ breathing: (h) => 18 + 8 * Math.sin((2 * Math.PI * (h - 9)) / 24) });

  test('only a coat on porous concrete minds; rising is a caution, a stop only by rule', () => {
    expect(at(search(warming), 9).word).toBe('go');
    const porous = search(warming, { porous: true });
    expect([at(porous, 9).word, at(porous, 9).limiting?.code]).toEqual(['caution', 'window-rising']);
    expect(at(search(warming, { porous: true, risingStops: true }), 9).word).toBe('stop');
    expect(at(porous, 15).word).toBe('go');
    expect(at(porous, 15).rise).toBe(0);
  });

  test('the way out is to wait when an hour of the same day falls, else shade or a thin coat', () => {
    const porous = search(warming, { porous: true });
    const way = risingWayOut(porous, 9 * HOUR, true);
    expect(way.code).toBe('lift-start-later');
    const always = search(conditions({ breathing: (h) => 18 + h }), { porous: true });
    expect(risingWayOut(always, 9 * HOUR, true).code).toBe('lift-shade');
    expect(risingWayOut(always, 9 * HOUR, false).code).toBe('lift-thin-primer-first');
  });

  test('SL-N3, OG-6: while the depth still warms, a start after the surface’s peak is not yet free', () => {
    // Top-layer mean of the reference patio lags its surface by about an hour: still rising at 15 h, falling at 17 h.
    const patio = conditions({ breathing: (h) => 30 + 8 * Math.cos((2 * Math.PI * (h - 16)) / 24) });
    const found = search(patio, { porous: true });
    expect(at(found, 15).rise).toBeGreaterThan(0);
    expect(at(found, 16.25).rise).toBe(0);
  });
});

describe('other limits', () => {
  test('temperature and humidity of the sheet, with the change that would open the hour', () => {
    const cold = at(search(conditions({ surface: () => 8.5 })), 9);
    expect([cold.word, cold.limiting?.code]).toEqual(['stop', 'window-slab-cold']);
    expect(cold.limiting?.lift).toEqual({ code: 'lift-warm-slab', by: 1.5 });
    const damp = at(search(conditions({ humidity: () => 0.9 })), 9);
    expect(damp.limiting?.code).toBe('window-humidity-high');
    const close = at(search(conditions({ surface: () => 10.2 }, 0.5)), 9);
    expect([close.word, close.limiting?.code]).toEqual(['caution', 'window-slab-near-limit']);
  });

  test('rain and wind count outdoors only', () => {
    const wet = conditions({ rain: (h) => (h >= 11 && h < 12 ? 0.002 : 0), wind: () => 9 });
    expect(at(search(wet), 9).word).toBe('go');
    expect(at(search(wet, { outdoors: true }), 9).limiting?.code).toBe('window-rain');
    const windy = at(search(conditions({ wind: () => 9 }), { outdoors: true, windMost: 8 }), 9);
    expect(windy.limiting).toMatchObject({ code: 'window-wind', lift: { by: 1 } });
    expect(at(search(wet, { outdoors: true }), 13).limiting?.code).toBe('window-rain-before');
  });

  test('working hours, preparation and the recoat window; physics is named before them', () => {
    const fine = conditions({});
    expect(at(search(fine), 6).limiting).toMatchObject({ code: 'window-working-hours', lift: { by: 3600 } });
    expect(at(search(fine), 16.5).limiting?.lift.by).toBe(1800);
    expect(at(search(fine, { prepared: 10 * HOUR }), 9).limiting?.code).toBe('window-preparation');
    expect(at(search(fine, { recoatOpens: 10 * HOUR }), 9).limiting?.code).toBe('window-recoat-not-open');
    expect(at(search(fine, { recoatCloses: 9 * HOUR }), 9).limiting?.lift).toEqual({
      code: 'lift-abrade-again',
      by: 3600,
    });
    const night = at(search(conditions({ margin: () => 1 })), 3);
    expect(night.limiting?.code).toBe('window-dew-margin');
    expect(night.others.map((each) => each.code)).toContain('window-working-hours');
  });

  test('a hole in the weather is never a go', () => {
    const holed = conditions({});
    holed.known.fill(0, 140, 160);
    const each = at(search(holed), 9);
    expect([each.word, each.limiting?.code]).toEqual(['not known', 'window-weather-unknown']);
    const noRain = conditions({});
    noRain.rainKnown.fill(0);
    expect(at(search(noRain), 9).word).toBe('go');
    expect(at(search(noRain, { outdoors: true }), 9).limiting?.code).toBe('window-rain-unknown');
    const late = findWindows(conditions({}), coat, [], 46 * HOUR, 46 * HOUR);
    expect(late.starts[0]?.word).toBe('not known');
  });

  test('a slab too cold to cure by the sheet is not known to dry', () => {
    const each = at(search(conditions({ surface: () => 3 }), { slab: [undefined, undefined] }), 9);
    expect(each.limiting?.code).toBe('window-cure-unknown');
  });
});

test('ranked: go before caution, wide margin before narrow, early before late; stretches join equal verdicts', () => {
  const found = search(conditions({ margin: (h) => (h < 13 ? 3.5 : 9) }, 0.3));
  expect(found.ranked[0]?.start).toBe(13 * HOUR);
  expect(found.ranked.every((each) => each.word === 'go')).toBe(true);
  expect(found.stretches.map((each) => each.word)).toEqual(['stop', 'go', 'stop']);
  expect(found.starts.length).toBe(97);
});

describe('coats one after the other', () => {
  const soon = cureLaw(
    [
      { temperature: 10, time: 12 * 3600 },
      { temperature: 20, time: 6 * 3600 },
    ],
    'film',
  );
  const late = cureLaw(
    [
      { temperature: 10, time: 48 * 3600 },
      { temperature: 20, time: 24 * 3600 },
    ],
    'film',
  );
  // The last coat of a chain leaves no window to a next one.
  const { recoatOpens: _opens, recoatCloses: _closes, ...last } = coat;
  const twoDays = [day[0], { from: 31 * HOUR, to: 41 * HOUR }] as { from: number; to: number }[];

  test('the second coat starts inside the window the first leaves', () => {
    const first = { ...coat, recoatOpens: soon, recoatCloses: late };
    const { placed, stuck } = placeChain(conditions({}), [first, last], twoDays, 0, 42 * HOUR);
    expect(stuck).toBeUndefined();
    const [a, b] = placed;
    expect(a?.start).toBe(7 * HOUR);
    // Six to eight hours of recoat time after eight: the same day is too late for an hour of laying before five.
    expect(b?.start as number).toBeGreaterThanOrEqual((a?.laid as number) + 5 * HOUR);
    expect(b?.word).toBe('go');
  });

  test('a window that closes before the next working hour leaves the second coat stuck, and says at which', () => {
    const hasty = cureLaw(
      [
        { temperature: 10, time: 8 * 3600 },
        { temperature: 20, time: 4 * 3600 },
      ],
      'film',
    );
    const first = { ...coat, recoatOpens: soon, recoatCloses: hasty };
    const { placed, stuck } = placeChain(conditions({}), [first, last], twoDays, 0, 42 * HOUR);
    expect(placed.length).toBe(1);
    expect(stuck?.coat).toBe(1);
    expect(
      stuck?.refused.some((each) =>
        [each.limiting, ...each.others].some((reason) => reason?.code === 'window-recoat-closed'),
      ),
    ).toBe(true);
  });
});
