import { z } from 'zod';
import { quantity, text } from './fields.ts';

/** A claim of a data sheet as evidence: a value is worth what is known of how it was measured. */

export const EVIDENCE_MODES = ['A', 'A/B', 'B', 'B/C', 'C', 'C/D', 'D', '-/Y', 'Y', 'Y/Z'] as const;

/** Settings of a test. Numbers are typed with their unit; the rest are words compared without case, blanks or dashes. */
export const conditions = () =>
  z.strictObject({
    /** Test piece: dumbbell IV, cube, cylinder, free film. */
    specimen: text(80).optional(),
    thickness: quantity('m', { least: '1 µm', most: '300 mm', shows: 'film' }).optional(),
    /** Of the grips or the head. */
    speed: quantity('m/s', { least: '0.001 mm/min', most: '1 m/s' }).optional(),
    stressRate: quantity('Pa/s', { least: '0.001 MPa/s', most: '100 MPa/s', shows: 'plain' }).optional(),
    temperature: quantity('°C', { least: '-60 °C', most: '200 °C', shows: 'temperature' }).optional(),
    humidity: quantity('1', { least: '0 %', most: '100 %', shows: 'humidity' }).optional(),
    /** Time the film had cured. */
    age: quantity('s', { least: '1 h', most: '3650 d', shows: 'duration' }).optional(),
    filled: z.enum(['filled', 'neat']).optional(),
    /** Shore A or D; tape method A or B. */
    scale: text(20).optional(),
    /** Time between touching and reading a hardness. */
    dwell: quantity('s', { least: '0 s', most: '60 s', shows: 'duration' }).optional(),
    wheel: text(20).optional(),
    load: quantity('kg', { least: '1 g', most: '100 kg', shows: 'mass' }).optional(),
    cycles: z.number().int().min(1).max(10_000_000).optional(),
    /** Of the film that was worn, so that a mass becomes a volume. */
    density: quantity('kg/m³', { least: '500 kg/m³', most: '4000 kg/m³', shows: 'density' }).optional(),
    substrate: text(80).optional(),
    /** Compressive strength of the concrete under the film. */
    substrateStrength: quantity('Pa', { least: '5 MPa', most: '150 MPa', shows: 'stress' }).optional(),
    dolly: quantity('m', { least: '5 mm', most: '200 mm', shows: 'small-length' }).optional(),
    scored: z.enum(['scored', 'not scored']).optional(),
    span: quantity('m', { least: '1 mm', most: '1 m', shows: 'small-length' }).optional(),
    ball: quantity('m', { least: '1 mm', most: '100 mm', shows: 'small-length' }).optional(),
    face: z.enum(['direct', 'reverse']).optional(),
    lamp: text(40).optional(),
    cycle: text(80).optional(),
    irradiance: quantity('W/m²', { least: '0.01 W/m²', most: '2000 W/m²', shows: 'plain' }).optional(),
    /** Time under the lamp or in the reagent. */
    exposure: quantity('s', { least: '1 min', most: '3650 d', shows: 'duration' }).optional(),
    criterion: text(80).optional(),
    reagent: text(80).optional(),
    concentration: quantity('1', { least: '0 %', most: '100 %', shows: 'share' }).optional(),
    covered: z.enum(['covered', 'open']).optional(),
    /** Scale of the rating: no change to destroyed, 0 to 5. */
    rating: text(80).optional(),
    state: z.enum(['wet', 'dry']).optional(),
    device: text(60).optional(),
    slider: text(40).optional(),
    /** Water and exempt solvent taken out of the volume, or not. */
    exempt: z.enum(['deducted', 'not deducted']).optional(),
  });

export type Conditions = z.output<ReturnType<typeof conditions>>;
export type ConditionKey = keyof Conditions;

export const property = () =>
  z.strictObject({
    /** A property of the table of methods: tensile strength, wear, adhesion. */
    what: text(60),
    method: text(60).optional(),
    /** Number with unit, a range `a to b`, a bound `at least a`, a rank of a scale, or words. */
    value: text(80),
    conditions: conditions().optional(),
    /** Plane that failed in a pull-off, as the standards letter it. */
    failureMode: z.enum(EVIDENCE_MODES).optional(),
  });

export type Property = z.output<ReturnType<typeof property>>;
