import { z } from 'zod';
import { claimsOfBridging, crackBridging } from './catalogue-before.ts';
import { property } from './evidence.ts';
import { date, fact, idText, quantity, text, wholeNumber } from './fields.ts';
import type { Result } from './kernel/issue.ts';
import { checkSchema, readJson, validate } from './read.ts';

/** Products as their data sheets state them, systems built of them, tools and the firm's rates. No prices. */

export const CATALOGUE_SCHEMA = 'slabwright.catalogue';
export const CATALOGUE_VERSION = 1;

const share = (most = '100 %') => fact('1', 'data sheet', { least: '0 %', most, shows: 'share' });
const film = () => fact('m', 'data sheet', { least: '0.005 mm', most: '20 mm', shows: 'film' });
const temperature = () => quantity('°C', { least: '-40 °C', most: '80 °C', shows: 'temperature' });
const humidity = () => quantity('1', { least: '0 %', most: '100 %', shows: 'humidity' });
const volume = () => quantity('m³', { least: '0.01 L', most: '2000 L', shows: 'volume' });

export const CHEMISTRIES = [
  'epoxy',
  'polyurea',
  'polyaspartic',
  'aromatic urethane',
  'aliphatic urethane',
  'acrylic',
  'cementitious urethane',
  'silicate',
] as const;

export const MOMENTS = [
  'pot life',
  'open time',
  'touch dry',
  'recoat from',
  'recoat until',
  'broadcast until',
  'foot',
  'light',
  'vehicle',
  'full',
] as const;
export type Moment = (typeof MOMENTS)[number];

/** One time of a data sheet at its temperature (and humidity, where the sheet says one). */
const time = () =>
  z.strictObject({
    what: z.enum(MOMENTS),
    at: temperature(),
    humidity: humidity().optional(),
    value: fact('s', 'data sheet', { least: '10 s', most: '90 d', shows: 'duration' }),
  });

const component = () =>
  z.strictObject({
    id: idText(),
    name: text(80),
    density: fact('kg/m³', 'data sheet', { least: '500 kg/m³', most: '4000 kg/m³', shows: 'density' }).optional(),
    /** Adds volume without being part of the ratio: a tint or an accelerator. */
    addition: z.boolean().optional(),
  });

const ratio = () =>
  z
    .array(z.strictObject({ component: idText(), parts: z.number().gt(0).max(1000) }))
    .min(1)
    .max(6);

/** What is bought: one kit with its parts, or a pail of one component alone. */
const pack = () =>
  z.strictObject({
    id: idText(),
    name: text(80).optional(),
    parts: z
      .array(z.strictObject({ component: idText(), volume: volume() }))
      .min(1)
      .max(6),
    /** Mixed volume the sheet says comes out, when below the sum of the parts. */
    yields: volume().optional(),
  });

/** Least and most a film may be, dry or wet, on the floor and on a vertical. */
const filmLimits = () =>
  z.strictObject({
    leastDry: film().optional(),
    mostDry: film().optional(),
    leastWet: film().optional(),
    mostWet: film().optional(),
    mostWetVertical: film().optional(),
  });

const climateLimits = () =>
  z.strictObject({
    slabLeast: temperature().optional(),
    slabMost: temperature().optional(),
    airLeast: temperature().optional(),
    airMost: temperature().optional(),
    humidityLeast: humidity().optional(),
    humidityMost: humidity().optional(),
    materialLeast: temperature().optional(),
    materialMost: temperature().optional(),
    dewMargin: quantity('K', { least: '0 K', most: '20 K', shows: 'difference' }).optional(),
    /** Most wind over an open floor while it is laid. */
    windMost: quantity('m/s', { least: '0.5 m/s', most: '30 m/s' }).optional(),
    /** The sheet lets it onto bare concrete only while the slab cools. */
    onlyFalling: z.boolean().optional(),
  });

const moistureLimit = () =>
  z.strictObject({
    method: z.enum(['ASTM F2170', 'ASTM F1869', 'BS 8203 hood', 'carbide']),
    humidity: fact('1', 'data sheet', { least: '1 %', most: '100 %', shows: 'humidity' }).optional(),
    emission: fact('kg/(m² s)', 'data sheet', {
      least: '0.1 lb/1000 ft²·24 h',
      most: '50 lb/1000 ft²·24 h',
      shows: 'emission',
    }).optional(),
    content: fact('1', 'data sheet', { least: '0.1 %', most: '20 %', shows: 'share' }).optional(),
  });

/**
 * Another mix the sheet allows: the same part A with a fast hardener, say. It has its own ratio; of the rest it states
 * only what differs, and takes from its product what it does not say.
 */
const otherMix = () =>
  z.strictObject({
    id: idText(),
    name: text(80),
    sheet: z.strictObject({ name: text(80), date: date().optional() }).optional(),
    /** Volume parts of this mix, by component. */
    mix: ratio(),
    volumeSolids: fact('1', 'data sheet', { least: '5 %', most: '100 %', shows: 'share' }).optional(),
    film: filmLimits().optional(),
    /** A moment named here stands in place of all times of that moment of the product. */
    times: z.array(time()).max(80).optional(),
    mixTime: fact('s', 'data sheet', { least: '30 s', most: '30 min', shows: 'duration' }).optional(),
    largestBatch: volume().optional(),
    smallestBatch: volume().optional(),
    climate: climateLimits().optional(),
  });

export const CONSUMPTION_PARTS = ['film', 'profile', 'texture', 'loss'] as const;

const stated = () =>
  z.strictObject({
    id: idText(),
    name: text(80),
    sheet: z.strictObject({ name: text(80), date: date().optional() }),
    chemistry: z.enum(CHEMISTRIES),
    components: z.array(component()).min(1).max(6),
    /** Volume parts of the first mix, by component: what a coat is mixed by unless it names another. */
    mix: ratio(),
    /** What the first mix is called where there are others: `standard hardener`. */
    mixName: text(80).optional(),
    /** Further mixes the sheet allows; no other is. */
    mixes: z.array(otherMix()).max(12).optional(),
    packs: z.array(pack()).min(1).max(20),
    /** A kit is opened whole, or the sheet allows part of one by weight. */
    partKits: z.boolean().optional(),
    volumeSolids: fact('1', 'data sheet', { least: '5 %', most: '100 %', shows: 'share' }),
    film: filmLimits().optional(),
    times: z.array(time()).max(80).optional(),
    humidityCured: z.boolean().optional(),
    mixTime: fact('s', 'data sheet', { least: '30 s', most: '30 min', shows: 'duration' }).optional(),
    largestBatch: volume().optional(),
    smallestBatch: volume().optional(),
    climate: climateLimits().optional(),
    moisture: z.array(moistureLimit()).max(8).optional(),
    youngestConcrete: fact('s', 'data sheet', { least: '0 d', most: '400 d', shows: 'duration' }).optional(),
    light: z.enum(['stable', 'yellows', 'not known']).optional(),
    bondNeed: fact('Pa', 'data sheet', { least: '10 psi', most: '3000 psi', shows: 'stress' }).optional(),
    /** Least single pull-off allowed beside the mean that `bondNeed` asks for. */
    bondLeast: fact('Pa', 'data sheet', { least: '10 psi', most: '3000 psi', shows: 'stress' }).optional(),
    profile: z
      .strictObject({ least: wholeNumber(1, 10), most: wholeNumber(1, 10), edition: text(40).optional() })
      .optional(),
    thinner: z
      .strictObject({
        allowed: z.enum(['yes', 'no', 'not known']),
        /** The thinner of this catalogue that the sheet names, so that it can be bought. */
        thinner: idText().optional(),
        most: share('50 %').optional(),
        name: text(80).optional(),
        density: fact('kg/m³', 'data sheet', { least: '500 kg/m³', most: '2000 kg/m³', shows: 'density' }).optional(),
        lengthensOpenTime: z.enum(['yes', 'no', 'not known']).optional(),
      })
      .optional(),
    voc: fact('kg/m³', 'data sheet', { least: '0 g/L', most: '1200 g/L', shows: 'voc' }).optional(),
    flash: fact('°C', 'data sheet', { least: '-60 °C', most: '300 °C', shows: 'temperature' }).optional(),
    solvent: z
      .strictObject({
        name: text(80),
        density: fact('kg/m³', 'data sheet', { least: '500 kg/m³', most: '2000 kg/m³', shows: 'density' }),
        molarMass: fact('kg/mol', 'data sheet', { least: '10 g/mol', most: '500 g/mol', shows: 'plain' }),
        lowerExplosiveLimit: fact('1', 'data sheet', { least: '0.1 %', most: '20 %', shows: 'concentration' }),
      })
      .optional(),
    isocyanate: z.boolean().optional(),
    amine: z.boolean().optional(),
    /** The sheet states litres per area itself, and says what that includes. */
    consumption: z
      .strictObject({
        value: fact('m', 'data sheet', { least: '0.001 L/m²', most: '20 L/m²', shows: 'film' }),
        includes: z.array(z.enum(CONSUMPTION_PARTS)),
      })
      .optional(),
    /** Written by older files; read as a claim of the property crack bridging. */
    crackBridging: crackBridging().optional(),
    properties: z.array(property()).max(60).optional(),
  });

/**
 * A product, with what older files say of bridged cracks moved to where it stands with its method and conditions: one
 * claim among the properties of the sheet.
 */
const product = () =>
  stated().transform(({ crackBridging: shown, properties, ...rest }) => {
    const all = [...(properties ?? []), ...(shown ? claimsOfBridging(shown) : [])];
    return { ...rest, ...(properties || shown ? { properties: all } : {}) };
  });

/** Flake, quartz and the like. */
const media = () =>
  z.strictObject({
    id: idText(),
    name: text(80),
    bag: fact('kg', 'data sheet', { least: '0.1 kg', most: '2000 kg', shows: 'mass' }),
  });

/** A thinner as it is bought: tins of it, priced in the price book like any pack. */
const thinner = () =>
  z.strictObject({
    id: idText(),
    name: text(80),
    density: fact('kg/m³', 'data sheet', { least: '500 kg/m³', most: '2000 kg/m³', shows: 'density' }).optional(),
    packs: z
      .array(z.strictObject({ id: idText(), name: text(80).optional(), volume: volume() }))
      .min(1)
      .max(20),
  });

export const FILLER_KINDS = ['rigid', 'flexible'] as const;

/** Filler of cracks and joints as it is bought: packs of what they make, priced in the price book like any pack. */
const filler = () =>
  z.strictObject({
    id: idText(),
    name: text(80),
    /** Where its sheet lets it be used: rigid where nothing moves, flexible where something does. */
    kinds: z.array(z.enum(FILLER_KINDS)).min(1).max(2),
    packs: z
      .array(z.strictObject({ id: idText(), name: text(80).optional(), volume: volume() }))
      .min(1)
      .max(20),
  });

const layer = () =>
  z.strictObject({
    id: idText(),
    name: text(80).optional(),
    product: idText(),
    /** One of the product's further mixes; its first mix where nothing stands here. */
    mix: idText().optional(),
    /** Target on the floor, wet or dry; and on verticals where it is less. */
    wetFilm: fact('m', 'chosen', { least: '0.005 mm', most: '20 mm', shows: 'film' }).optional(),
    dryFilm: fact('m', 'chosen', { least: '0.005 mm', most: '20 mm', shows: 'film' }).optional(),
    wetFilmVertical: fact('m', 'chosen', { least: '0.005 mm', most: '20 mm', shows: 'film' }).optional(),
    /** Goes on stem walls, coves and steps too. */
    verticals: z.boolean().optional(),
    /** First coat on bare concrete: fills the profile and may be drawn into pores. */
    onConcrete: z.boolean().optional(),
    porosity: fact('m', 'own test', { least: '0 mm', most: '5 mm', shows: 'film' }).optional(),
    /** Mean depth of a broadcast below that this coat must fill on the flat. */
    textureDepth: fact('m', 'own test', { least: '0 mm', most: '10 mm', shows: 'film' }).optional(),
    broadcast: z
      .strictObject({
        media: idText(),
        thrown: fact('kg/m²', 'chosen', { least: '0.001 kg/m²', most: '20 kg/m²', shows: 'area-mass' }),
        kept: fact('kg/m²', 'own test', { least: '0.001 kg/m²', most: '20 kg/m²', shows: 'area-mass' }).optional(),
        verticals: z.boolean().optional(),
        toRefusal: z.boolean().optional(),
      })
      .optional(),
    /** Added to the net quantity: net × (1 + surplus). */
    surplus: fact('1', "firm's rate", { least: '0 %', most: '100 %', shows: 'share' }).optional(),
    /** Share of what is used that never reaches the floor: net ÷ (1 − loss). */
    loss: fact('1', "firm's rate", { least: '0 %', most: '90 %', shows: 'share' }).optional(),
    /** Kept back beside what is planned: bought, not spread. */
    reserve: fact('1', "firm's rate", { least: '0 %', most: '100 %', shows: 'share' }).optional(),
    /** Kind of work, for the firm's rates: one of the rate tasks. */
    work: idText().optional(),
  });

const system = () =>
  z.strictObject({
    id: idText(),
    name: text(120),
    layers: z.array(layer()).min(1).max(12),
    /** Sheet's own word on what prepares for it. */
    profile: z.strictObject({ least: wholeNumber(1, 10), most: wholeNumber(1, 10) }).optional(),
  });

const tool = () =>
  z.strictObject({
    id: idText(),
    name: text(80),
    method: idText(),
    width: quantity('m', { least: '20 mm', most: '3 m', shows: 'small-length' }).optional(),
    mass: quantity('kg', { least: '1 kg', most: '5000 kg', shows: 'mass' }).optional(),
    power: quantity('W', { least: '100 W', most: '200 kW', shows: 'power' }).optional(),
    phases: wholeNumber(1, 3).optional(),
    voltage: quantity('V', { least: '100 V', most: '1000 V', shows: 'plain' }).optional(),
    powerFactor: z.number().gt(0).max(1).optional(),
    efficiency: z.number().gt(0).max(1).optional(),
    airflow: quantity('m³/s', { least: '1 cfm', most: '5000 cfm', shows: 'airflow' }).optional(),
    wheel: quantity('m', { least: '50 mm', most: '1 m', shows: 'small-length' }).optional(),
  });

/** A rate of work by one person or machine, in the unit of its task: m²/s, m/s, or seconds for a whole task. */
const rate = () =>
  z.union([
    z.strictObject({
      task: idText(),
      area: fact('m²/s', "firm's rate", { least: '0.1 m²/h', most: '2000 m²/h', shows: 'area-rate' }),
    }),
    z.strictObject({
      task: idText(),
      length: fact('m/s', "firm's rate", { least: '0.1 m/h', most: '2000 m/h', shows: 'length-rate' }),
    }),
    z.strictObject({
      task: idText(),
      whole: fact('s', "firm's rate", { least: '1 min', most: '400 h', shows: 'duration' }),
    }),
  ]);

export const catalogue = () =>
  z.strictObject({
    schema: z.literal(`${CATALOGUE_SCHEMA}/${CATALOGUE_VERSION}`),
    id: idText(),
    products: z.array(product()).max(2000),
    media: z.array(media()).max(500).optional(),
    thinners: z.array(thinner()).max(200).optional(),
    /** Of several for one kind the first is taken. */
    fillers: z.array(filler()).max(100).optional(),
    systems: z.array(system()).max(1000),
    tools: z.array(tool()).max(500).optional(),
    rates: z.array(rate()).max(500).optional(),
  });

export type Catalogue = z.output<ReturnType<typeof catalogue>>;
export type CatalogueFile = z.input<ReturnType<typeof catalogue>>;
export type Product = Catalogue['products'][number];
export type System = Catalogue['systems'][number];
export type Layer = System['layers'][number];
export type Tool = NonNullable<Catalogue['tools']>[number];
export type Rate = NonNullable<Catalogue['rates']>[number];
export type Pack = Product['packs'][number];
export type OtherMix = NonNullable<Product['mixes']>[number];
export type Filler = NonNullable<Catalogue['fillers']>[number];
export type FillerKind = (typeof FILLER_KINDS)[number];
export type Thinner = NonNullable<Catalogue['thinners']>[number];

const CATALOGUE = catalogue();

export function catalogueFrom(value: unknown): Result<Catalogue> {
  const issues = checkSchema(value, CATALOGUE_SCHEMA, CATALOGUE_VERSION);
  return issues.length > 0 ? { ok: false, issues } : validate(CATALOGUE, value);
}

export function catalogueFromText(text: string): Result<Catalogue> {
  const json = readJson(text);
  return json.ok ? catalogueFrom(json.value) : json;
}
