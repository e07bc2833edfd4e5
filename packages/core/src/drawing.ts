import { z } from 'zod';
import { dateOrInstant, fact, idText, instant, quantity, seen, text, wholeNumber } from './fields.ts';

/** The floor as it is drawn: coordinates are what a tape reads, along x and y from any corner. */

const coordinate = () => quantity('m', { least: '-2000 m', most: '2000 m', shows: 'length' });
export const point = () => z.tuple([coordinate(), coordinate()]);
const ring = () => z.array(point()).min(3).max(2000);
const line = () => z.array(point()).min(2).max(500);

const length = () => quantity('m', { least: '0.01 m', most: '2000 m', shows: 'length' });

/** Sides and diagonals between named corners, for a room nobody drew with coordinates. */
const tape = () =>
  z.strictObject({
    corners: z.array(idText()).min(3).max(60),
    measures: z
      .array(z.strictObject({ from: idText(), to: idText(), length: length(), error: length().optional() }))
      .min(2)
      .max(400),
    /** Corners assumed square: said aloud in the plan. */
    rightAngles: z.array(idText()).optional(),
    /** Standard deviation of one tape reading. */
    error: quantity('m', { least: '0.1 mm', most: '200 mm', shows: 'small-length' }).optional(),
  });

const exit = () =>
  z.strictObject({
    id: idText(),
    name: text(80).optional(),
    from: point(),
    to: point(),
    outside: z.boolean().optional(),
    /** Kept shut from this moment on, for instance a house door sealed from inside. */
    shut: z.boolean().optional(),
  });

/** Width of film that lies free of the slab over a crack or joint: a bond-breaker tape. Bonded up to it is 0. */
const bondBreaker = () => quantity('m', { least: '0 mm', most: '500 mm', shows: 'small-length' });

export const JOINT_KINDS = ['isolation', 'contraction', 'construction'] as const;
const joint = () =>
  z.strictObject({
    id: idText(),
    kind: z.enum(JOINT_KINDS),
    along: line(),
    width: fact('m', 'reading', { least: '0.1 mm', most: '200 mm', shows: 'small-length' }).optional(),
    depth: fact('m', 'reading', { least: '1 mm', most: '500 mm', shows: 'small-length' }).optional(),
    bondBreaker: bondBreaker().optional(),
  });

/** A width read with a comparator, with the slab temperature of that moment. */
const widthReading = () =>
  z.strictObject({
    width: quantity('m', { least: '0 mm', most: '100 mm', shows: 'small-length' }),
    on: dateOrInstant(),
    slab: quantity('°C', { least: '-40 °C', most: '80 °C', shows: 'temperature' }).optional(),
  });

const crack = () =>
  z.strictObject({
    id: idText(),
    along: line(),
    widths: z.array(widthReading()).max(50),
    moves: seen().optional(),
    /** One side higher than the other. */
    step: quantity('m', { least: '0 mm', most: '200 mm', shows: 'small-length' }).optional(),
    bondBreaker: bondBreaker().optional(),
  });

export const SPOT_KINDS = ['oil', 'spall', 'pit', 'old film', 'soft concrete', 'ponding', 'drain'] as const;
const spot = () =>
  z.strictObject({
    id: idText(),
    kind: z.enum(SPOT_KINDS),
    at: point(),
    area: fact('m²', 'reading', { least: '0.0001 m²', most: '5000 m²', shows: 'area' }),
    depth: fact('m', 'reading', { least: '0.1 mm', most: '500 mm', shows: 'small-length' }).optional(),
    /** What a drop of water did there after treatment. */
    waterDrop: z.enum(['soaks in', 'stays', 'not tested']).optional(),
  });

export const area = () =>
  z.strictObject({
    id: idText(),
    name: text(80),
    outline: ring().optional(),
    tape: tape().optional(),
    holes: z
      .array(z.strictObject({ id: idText(), name: text(80).optional(), outline: ring() }))
      .max(500)
      .optional(),
    exits: z.array(exit()).max(60).optional(),
    joints: z.array(joint()).max(500).optional(),
    cracks: z.array(crack()).max(500).optional(),
    spots: z.array(spot()).max(500).optional(),
    points: z
      .array(z.strictObject({ id: idText(), at: point(), name: text(80).optional() }))
      .max(500)
      .optional(),
    walls: z
      .array(z.strictObject({ from: point(), to: point() }))
      .max(500)
      .optional(),
    stemWalls: z
      .array(
        z.strictObject({
          id: idText(),
          length: fact('m', 'reading', { least: '0.01 m', most: '2000 m', shows: 'length' }),
          height: fact('m', 'reading', { least: '10 mm', most: '3 m', shows: 'small-length' }),
        }),
      )
      .max(100)
      .optional(),
    coves: z
      .array(
        z.strictObject({
          id: idText(),
          length: fact('m', 'reading', { least: '0.01 m', most: '2000 m', shows: 'length' }),
          radius: fact('m', 'reading', { least: '5 mm', most: '300 mm', shows: 'small-length' }),
        }),
      )
      .max(100)
      .optional(),
    steps: z
      .array(
        z.strictObject({
          id: idText(),
          risers: wholeNumber(1, 100),
          riser: fact('m', 'reading', { least: '20 mm', most: '400 mm', shows: 'small-length' }),
          tread: fact('m', 'reading', { least: '100 mm', most: '2 m', shows: 'small-length' }),
          width: fact('m', 'reading', { least: '0.3 m', most: '50 m', shows: 'length' }),
        }),
      )
      .max(40)
      .optional(),
    /** Mean depth of the voids of the ground surface below its peaks, measured or the firm's own. */
    profileDepth: fact('m', 'reading', { least: '0 mm', most: '10 mm', shows: 'film' }).optional(),
    /** Floor under the sun during the day: outlines of the patches. */
    sun: z
      .array(z.strictObject({ id: idText(), outline: ring(), from: instant().optional(), until: instant().optional() }))
      .max(20)
      .optional(),
    /** Edge of the floor at the door left open to weather and tyres. */
    doorEdge: z.enum(['keyed', 'feathered', 'not known']).optional(),
  });

/** A doorway in the wall of one area, in the coordinates of that area. */
const doorSide = () => z.strictObject({ area: idText(), from: point(), to: point() });

/** A doorway through which the floor of one area goes on in another. */
export const door = () =>
  z.strictObject({
    id: idText(),
    name: text(80).optional(),
    /** The same opening as each of the two areas has it. */
    sides: z.tuple([doorSide(), doorSide()]),
    /** Thickness of the wall between them; left out: the two floors meet. */
    wall: quantity('m', { least: '0 mm', most: '2 m', shows: 'small-length' }).optional(),
    /** Kept shut while the floor is laid: nobody walks through, nothing is spread through. */
    shut: z.boolean().optional(),
  });

export type AreaDoor = z.output<ReturnType<typeof door>>;
export type Area = z.output<ReturnType<typeof area>>;
