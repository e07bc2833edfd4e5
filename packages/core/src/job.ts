import { z } from 'zod';
import { area, door, point } from './drawing.ts';
import {
  amount,
  clockTime,
  date,
  dateOrInstant,
  fact,
  idText,
  instant,
  quantity,
  seen,
  text,
  wholeNumber,
  zone,
} from './fields.ts';
import type { Result } from './kernel/issue.ts';
import { exemptSolvent, season, vocLimit } from './place.ts';
import { checkSchema, readJson, validate } from './read.ts';

/** A job: what was found on a slab, what is wanted, and which choices stand side by side. It holds no prices. */

export const JOB_SCHEMA = 'slabwright.job';
export const JOB_VERSION = 1;

const temperature = () => quantity('°C', { least: '-40 °C', most: '80 °C', shows: 'temperature' });
const humidity = () => quantity('1', { least: '0 %', most: '100 %', shows: 'humidity' });

/** What lies on a slab and since when. Tile, adhesive, levelling coat and paint of an old building may hold asbestos or lead. */
export const COVERS = [
  'bare concrete',
  'paint',
  'old coating',
  'sealer',
  'curing compound',
  'tile',
  'black adhesive',
  'yellow adhesive',
  'levelling coat',
  'not known',
] as const;

const TESTED = ['none found', 'found', 'not tested'] as const;

const cover = () =>
  z.strictObject({
    id: idText(),
    what: z.enum(COVERS),
    since: wholeNumber(1800, 2200).optional(),
    areas: z.array(idText()).optional(),
    extent: fact('m²', 'reading', { least: '0.01 m²', most: '50000 m²', shows: 'area' }).optional(),
    thickness: fact('m', 'reading', { least: '0 mm', most: '100 mm', shows: 'film' }).optional(),
    asbestos: z.enum(TESTED).optional(),
    lead: z.enum(TESTED).optional(),
    testedBy: text(120).optional(),
    /** Cross-cut places tried and failed. */
    crossCuts: z.strictObject({ tried: wholeNumber(1, 1000), failed: wholeNumber(0, 1000) }).optional(),
  });

export const MOISTURE_METHODS = ['ASTM F2170', 'ASTM F1869', 'BS 8203 hood', 'carbide', 'ASTM D4263', 'meter'] as const;

const moistureTest = () =>
  z.strictObject({
    id: idText(),
    method: z.enum(MOISTURE_METHODS),
    edition: text(40).optional(),
    where: text(80).optional(),
    on: dateOrInstant().optional(),
    depthShare: quantity('1', { least: '1 %', most: '100 %', shows: 'share' }).optional(),
    wait: quantity('s', { least: '0 h', most: '60 d', shows: 'duration' }).optional(),
    /** Air and slab at service conditions for how long before the reading. */
    serviceConditionsFor: quantity('s', { least: '0 h', most: '60 d', shows: 'duration' }).optional(),
    air: temperature().optional(),
    slab: temperature().optional(),
    humidity: humidity().optional(),
    emission: quantity('kg/(m² s)', {
      least: '0 lb/1000 ft²·24 h',
      most: '100 lb/1000 ft²·24 h',
      shows: 'emission',
    }).optional(),
    content: quantity('1', { least: '0 %', most: '20 %', shows: 'share' }).optional(),
    sheet: z.enum(['dry', 'damp']).optional(),
    /** Dish kit: mass gained and net area, when the emission was not worked out yet. */
    massGain: quantity('kg', { least: '0 g', most: '200 g', shows: 'mass' }).optional(),
    dishArea: quantity('m²', { least: '0.001 m²', most: '1 m²', shows: 'area' }).optional(),
  });

export const FAILURE_MODES = ['A', 'A/B', 'B', 'B/C', 'C', 'C/D', 'D', '-/Y', 'Y', 'Y/Z'] as const;

const pullOff = () =>
  z.strictObject({
    id: idText(),
    where: text(80).optional(),
    on: dateOrInstant().optional(),
    after: z.enum(['preparation', 'as found', 'coating']),
    method: text(40).optional(),
    stress: quantity('Pa', { least: '0 psi', most: '3000 psi', shows: 'stress' }).optional(),
    force: quantity('N', { least: '0 N', most: '100 kN', shows: 'force' }).optional(),
    dolly: quantity('m', { least: '10 mm', most: '200 mm', shows: 'small-length' }).optional(),
    /** Plane that failed, as the pull-off standards letter it: A concrete, B first coat, Y glue. */
    mode: z.enum(FAILURE_MODES),
    glueShare: quantity('1', { least: '0 %', most: '100 %', shows: 'share' }).optional(),
  });

const climateReading = () =>
  z.strictObject({
    at: instant(),
    where: text(80).optional(),
    air: temperature(),
    humidity: humidity(),
    slab: temperature().optional(),
    /** Resin in its pail before mixing: a van in the sun is no store. */
    material: temperature().optional(),
    pressure: quantity('Pa', { least: '500 hPa', most: '1100 hPa', shows: 'pressure' }).optional(),
  });

/** What the slab feels of the weather: how the room stands to the outdoor air, and when its doors stand open. */
export const EXPOSURES = ['closed garage', 'open garage', 'heated room', 'patio'] as const;

export const HEATERS = ['none', 'electric or vented', 'unvented flame'] as const;

const exposure = () =>
  z.strictObject({
    kind: z.enum(EXPOSURES),
    /** Air of a heated room. */
    room: quantity('°C', { least: '5 °C', most: '40 °C', shows: 'temperature' }).optional(),
    /** What warms the room while the coats cure: a burner without a flue gives its water and gas to the film. */
    heater: z.enum(HEATERS).optional(),
    /** Stretches during which a door to the outside stands open. */
    doors: z
      .array(z.strictObject({ from: instant(), until: instant() }))
      .max(200)
      .optional(),
    /** Gravel or other base under the slab. */
    base: fact('m', 'reading', { least: '0 mm', most: '2 m', shows: 'small-length' }).optional(),
  });

const survey = () =>
  z.strictObject({
    on: dateOrInstant().optional(),
    by: text(80).optional(),
    building: z
      .strictObject({
        year: wholeNumber(1800, 2200).optional(),
        roomEmptied: seen().optional(),
        access: text(400).optional(),
        occupiedBeside: seen().optional(),
        adjoiningRooms: text(400).optional(),
        airReturns: seen().optional(),
        ignitionSources: text(400).optional(),
        power: z
          .strictObject({
            phases: wholeNumber(1, 3),
            voltage: quantity('V', { least: '100 V', most: '1000 V', shows: 'plain' }),
            current: quantity('A', { least: '1 A', most: '400 A', shows: 'current' }),
          })
          .optional(),
        water: seen().optional(),
        height: fact('m', 'reading', { least: '1.5 m', most: '30 m', shows: 'length' }).optional(),
      })
      .optional(),
    onFloor: z.array(cover()).max(50).optional(),
    services: z
      .strictObject({
        heatingPipes: seen().optional(),
        tendons: seen().optional(),
        cables: seen().optional(),
        drains: seen().optional(),
      })
      .optional(),
    slab: z
      .strictObject({
        cast: date().optional(),
        thickness: fact('m', 'reading', { least: '20 mm', most: '3 m', shows: 'small-length' }).optional(),
        grade: z.enum(['on ground', 'below grade', 'suspended', 'not known']).optional(),
        membrane: seen().optional(),
        membraneSource: text(120).optional(),
        finish: text(120).optional(),
        compressiveStrength: fact('Pa', 'reading', { least: '500 psi', most: '20000 psi', shows: 'stress' }).optional(),
        /** Mohs scratch value. */
        scratch: z.number().min(1).max(10).optional(),
        falls: text(200).optional(),
      })
      .optional(),
    moisture: z
      .strictObject({
        tests: z.array(moistureTest()).max(400).optional(),
        signs: z
          .strictObject({
            seepage: seen().optional(),
            saltLine: seen().optional(),
            oldFilmBlisters: seen().optional(),
            history: text(600).optional(),
          })
          .optional(),
        /** Last flood, wet cutting or wet grinding: tests before it no longer count. */
        wetSince: date().optional(),
      })
      .optional(),
    pullOffs: z.array(pullOff()).max(400).optional(),
    afterPreparation: z
      .strictObject({
        on: dateOrInstant().optional(),
        waterDrops: z
          .array(z.strictObject({ where: text(80), result: z.enum(['soaks in', 'stays']) }))
          .max(400)
          .optional(),
        dustTape: z.enum(['clean', 'dusty']).optional(),
        profiles: z
          .array(z.strictObject({ where: text(80), profile: wholeNumber(1, 10), edition: text(40).optional() }))
          .max(400)
          .optional(),
      })
      .optional(),
    exposure: exposure().optional(),
    climate: z.array(climateReading()).max(5000).optional(),
    testPatch: z
      .strictObject({
        on: dateOrInstant(),
        where: text(80).optional(),
        method: idText(),
        tool: idText().optional(),
        area: quantity('m²', { least: '0.1 m²', most: '200 m²', shows: 'area' }),
        time: quantity('s', { least: '10 s', most: '12 h', shows: 'duration' }),
        profile: wholeNumber(1, 10).optional(),
        /** Tool wear seen, as the person judged it. */
        wear: z.enum(['normal', 'glazed', 'fast']).optional(),
      })
      .optional(),
    /** Pieces of tile, levelling coat or oil taken off and timed: another trade than a film, each with a rate of its own. */
    removalPatches: z
      .array(
        z.strictObject({
          what: z.enum(['tile', 'levelling coat', 'oil']),
          on: dateOrInstant(),
          where: text(80).optional(),
          area: quantity('m²', { least: '0.1 m²', most: '200 m²', shows: 'area' }),
          time: quantity('s', { least: '10 s', most: '12 h', shows: 'duration' }),
        }),
      )
      .max(20)
      .optional(),
    openTimeTests: z
      .array(
        z.strictObject({
          product: idText(),
          /** The further mix that was rolled; the first mix of the product where nothing stands here. */
          mix: idText().optional(),
          on: dateOrInstant(),
          slab: temperature(),
          humidity: humidity().optional(),
          /** A square metre rolled, tied in after so long: did the lap vanish? */
          ties: z
            .array(
              z.strictObject({
                after: quantity('s', { least: '30 s', most: '6 h', shows: 'duration' }),
                vanished: z.boolean(),
              }),
            )
            .min(1),
        }),
      )
      .max(60)
      .optional(),
  });

const use = () =>
  z.strictObject({
    traffic: z.enum(['foot', 'light', 'vehicle', 'forklift']).optional(),
    hotTyres: seen().optional(),
    chemicals: z.array(text(80)).max(40).optional(),
    water: z.enum(['dry', 'washed', 'often wet']).optional(),
    sun: seen().optional(),
    slip: z.enum(['smooth', 'some grip', 'much grip']).optional(),
    smellMatters: seen().optional(),
    footBy: instant().optional(),
    vehicleBy: instant().optional(),
    /** Must-haves of this job in the firm's own words: they replace those that follow from the use. */
    needs: z
      .array(
        z.strictObject({
          /** A property of the table of test methods. */
          what: text(60),
          /** Least the test must show; the most where less is better. Left out: the test must be on the sheet. */
          least: text(60).optional(),
          method: text(60).optional(),
          why: text(300),
          /** The property does not matter on this floor. */
          waived: z.boolean().optional(),
        }),
      )
      .max(40)
      .optional(),
  });

/** One way to do the job, beside others. */
const option = () =>
  z.strictObject({
    id: idText(),
    name: text(120),
    system: idText(),
    areas: z.array(idText()).min(1).max(200),
    accepted: z.boolean().optional(),
    /** Leave a part of the drawing uncoated in this option: ids of stem walls, coves or steps. */
    leaveOut: z.array(idText()).optional(),
    preparation: z
      .strictObject({
        method: idText().optional(),
        passes: wholeNumber(1, 10).optional(),
        removal: idText().optional(),
      })
      .optional(),
    /** Thinner by layer, volume of thinner per volume of mixed coating. */
    thinner: z
      .array(z.strictObject({ layer: idText(), ratio: quantity('1', { least: '0 %', most: '50 %', shows: 'share' }) }))
      .optional(),
    people: wholeNumber(1, 40),
    /** One person does nothing but mix; left out: so from three people on. */
    dedicatedMixer: z.boolean().optional(),
    /** How this crew spreads, where it is known; what is left out is assumed and said so. */
    spread: z
      .strictObject({
        lane: fact('m', 'chosen', { least: '0.2 m', most: '2 m', shows: 'length' }).optional(),
        /** People who only cut in the edges, and who only broadcast; left out: whoever spreads does it. */
        cutters: wholeNumber(0, 20).optional(),
        broadcasters: wholeNumber(0, 20).optional(),
        /** The crew may walk on fresh film. */
        spikedShoes: z.boolean().optional(),
        /** Where batches are mixed on the floor; left out: outside, at the way out. */
        mixAt: z.strictObject({ area: idText(), at: point() }).optional(),
      })
      .optional(),
    /** Hours paid for, when the firm already knows them: travel, waiting and survey included. */
    paidHours: fact('s', 'chosen', { least: '0.5 h', most: '20000 h', shows: 'duration' }).optional(),
    contingency: fact('1', 'chosen', { least: '0 %', most: '100 %', shows: 'share' }).optional(),
    /** Hours of the crew on site, by the clock of the place. */
    workday: z.strictObject({ from: clockTime(), until: clockTime() }).optional(),
    /** Joints and cracks coated over although no coat was shown to bridge them, by id. */
    coatOver: z.array(idText()).max(200).optional(),
    /** Start of each layer, as planned on the day. */
    starts: z.array(z.strictObject({ layer: idText(), at: instant() })).optional(),
    /** Tape lines at which the film may end, beside the joints of the drawing. */
    stopLines: z
      .array(z.strictObject({ id: idText(), area: idText(), from: point(), to: point() }))
      .max(40)
      .optional(),
    /** Changes priced beforehand, by their id in the price book. */
    changes: z.array(idText()).max(40).optional(),
  });

export const job = () =>
  z.strictObject({
    schema: z.literal(`${JOB_SCHEMA}/${JOB_VERSION}`),
    id: idText(),
    title: text(120),
    number: text(40).optional(),
    customer: z
      .strictObject({ name: text(120).optional(), address: text(300).optional(), site: text(300).optional() })
      .optional(),
    firm: z.strictObject({ name: text(120), by: text(120).optional(), contact: text(300).optional() }).optional(),
    place: z.strictObject({
      zone: zone(),
      /** Key of the tax, deposit and rule tables of the price book. */
      jurisdiction: text(80).optional(),
      latitude: z.number().min(-90).max(90).optional(),
      longitude: z.number().min(-180).max(180).optional(),
      altitude: quantity('m', { least: '-430 m', most: '9000 m', shows: 'length' }).optional(),
      vocLimits: z.array(vocLimit()).max(40).optional(),
      exempt: z.array(exemptSolvent()).max(60).optional(),
      season: season().optional(),
    }),
    reader: z.strictObject({ units: z.enum(['imperial', 'metric']), paper: z.enum(['letter', 'a4']) }),
    use: use().optional(),
    areas: z.array(area()).min(1).max(200),
    /** Openings through which the floor of one area goes on in another. Each area keeps its own coordinates. */
    doors: z.array(door()).max(400).optional(),
    survey: survey(),
    options: z.array(option()).max(12),
    overrides: z
      .array(z.strictObject({ code: text(80), by: text(80), on: date(), why: text(400) }))
      .max(60)
      .optional(),
    /** What the customer may spend, as they said it. */
    budget: z.strictObject({ amount: amount(), currency: z.string().length(3) }).optional(),
    notes: text(5000).optional(),
  });

export type Job = z.output<ReturnType<typeof job>>;
export type JobFile = z.input<ReturnType<typeof job>>;
export type Survey = Job['survey'];
export type JobOption = Job['options'][number];
export type MoistureTest = NonNullable<NonNullable<Survey['moisture']>['tests']>[number];
export type PullOff = NonNullable<Survey['pullOffs']>[number];
export type Cover = NonNullable<Survey['onFloor']>[number];
export type ClimateReading = NonNullable<Survey['climate']>[number];

const JOB = job();

/** Reads a job file. Structure first; sense (crossing outlines, unknown ids) is checked by `checkJob`. */
export function jobFrom(value: unknown): Result<Job> {
  const issues = checkSchema(value, JOB_SCHEMA, JOB_VERSION);
  return issues.length > 0 ? { ok: false, issues } : validate(JOB, value);
}

export function jobFromText(text: string): Result<Job> {
  const json = readJson(text);
  return json.ok ? jobFrom(json.value) : json;
}
