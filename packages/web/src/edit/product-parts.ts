import { componentNames, ownThinners } from './names-in-files.ts';
import { freshId, type Raw, textAt } from './path.ts';
import { choice, DATE, FLAG, fact, field, group, list, number, type Part, quantity, TEXT } from './spec.ts';

/** A product as a person types it from its data sheet, in the order sheets use. */

export const named = (item: Raw): string => textAt(item, ['name']) || textAt(item, ['id']);
export const said = (item: Raw, ...keys: readonly string[]): string =>
  keys
    .map((key) => textAt(item, [key]) || textAt(item, [key, 'value']))
    .filter(Boolean)
    .join(', ');
const temperature = (example: string) => quantity('°C', example);
const humidity = (example: string) => quantity('1', example);
const film = (example: string) => fact('m', example);
const three = choice(['yes', 'no', 'not known']);
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
];

const CONDITIONS: readonly Part[] = [
  field('conditions.specimen', 'Test piece', TEXT),
  field('conditions.thickness', 'Thickness', quantity('m', '80 mil')),
  field('conditions.speed', 'Speed', quantity('m/s', '20 in/min')),
  field('conditions.stressRate', 'Rate of stress', quantity('Pa/s', '30 psi/s')),
  field('conditions.temperature', 'Temperature', quantity('°C', '73 °F')),
  field('conditions.humidity', 'Humidity', quantity('1', '50 %')),
  field('conditions.age', 'Cured for', quantity('s', '7 d')),
  field('conditions.filled', 'Film', choice(['filled', 'neat'])),
  field('conditions.scale', 'Scale', TEXT),
  field('conditions.dwell', 'Read after', quantity('s', '1 s')),
  field('conditions.wheel', 'Wheel', TEXT),
  field('conditions.load', 'Load', quantity('kg', '1 kg')),
  field('conditions.cycles', 'Cycles', number('1000')),
  field('conditions.density', 'Density of the film', quantity('kg/m³', '1.1 kg/L')),
  field('conditions.substrate', 'On', TEXT),
  field('conditions.substrateStrength', 'Strength of the concrete', quantity('Pa', '5000 psi')),
  field('conditions.dolly', 'Dolly', quantity('m', '50 mm')),
  field('conditions.scored', 'Cut round', choice(['scored', 'not scored'])),
  field('conditions.span', 'Span', quantity('m', '100 mm')),
  field('conditions.ball', 'Ball', quantity('m', '16 mm')),
  field('conditions.face', 'Hit on the face', choice(['direct', 'reverse'])),
  field('conditions.lamp', 'Lamp', TEXT),
  field('conditions.cycle', 'Cycle', TEXT),
  field('conditions.irradiance', 'Irradiance', quantity('W/m²', '0.89 W/m²')),
  field('conditions.exposure', 'Exposed for', quantity('s', '1000 h')),
  field('conditions.criterion', 'Ended when', TEXT),
  field('conditions.reagent', 'Reagent', TEXT),
  field('conditions.concentration', 'Concentration', quantity('1', '10 %')),
  field('conditions.covered', 'Drop', choice(['covered', 'open'])),
  field('conditions.rating', 'Scale of the rating', TEXT),
  field('conditions.state', 'Surface', choice(['wet', 'dry'])),
  field('conditions.device', 'Device', TEXT),
  field('conditions.slider', 'Slider', TEXT),
  field('conditions.exempt', 'Exempt solvent', choice(['deducted', 'not deducted'])),
];

/** What a mix of a product states too, where it differs. */
const RATIO: Part = list('mix', 'Ratio by volume', {
  one: 'a part of the ratio',
  title: (item) => [textAt(item, ['component']), textAt(item, ['parts'])].join(': '),
  begin: () => ({}),
  parts: [
    field('component', 'Component', { is: 'one of', from: componentNames }),
    field('parts', 'Parts by volume', number('2')),
  ],
});

const FILM: Part = group('Film', [
  field('film.leastWet', 'Wet, at least', film('6 mil')),
  field('film.mostWet', 'Wet, at most', film('16 mil')),
  field('film.mostWetVertical', 'Wet on walls, at most', film('8 mil')),
  field('film.leastDry', 'Dry, at least', film('4 mil')),
  field('film.mostDry', 'Dry, at most', film('12 mil')),
]);

const TIMES: Part = list('times', 'Times at temperatures', {
  one: 'a time',
  title: (item) => `${textAt(item, ['what'])} at ${textAt(item, ['at'])}: ${said(item, 'value')}`,
  begin: (items) => ({ what: MOMENTS[Math.min(items.length, MOMENTS.length - 1)], at: textAt(items.at(-1), ['at']) }),
  parts: [
    field(
      'what',
      'What',
      choice(MOMENTS, { foot: 'walked on', light: 'light traffic', vehicle: 'driven on', full: 'full cure' }),
    ),
    field('at', 'At', temperature('75 °F')),
    field('humidity', 'Humidity', humidity('50 %')),
    field('value', 'Time', fact('s', '20 min')),
  ],
});

const MIXING: readonly Part[] = [
  field('mixTime', 'Mixed for', fact('s', '3 min')),
  field('largestBatch', 'Largest batch', quantity('m³', '3 gal')),
  field('smallestBatch', 'Smallest batch', quantity('m³', '1 qt')),
];

const CLIMATE: Part = group('Climate', [
  field('climate.slabLeast', 'Slab, at least', temperature('40 °F')),
  field('climate.slabMost', 'Slab, at most', temperature('95 °F')),
  field('climate.airLeast', 'Air, at least', temperature('40 °F')),
  field('climate.airMost', 'Air, at most', temperature('95 °F')),
  field('climate.humidityLeast', 'Humidity, at least', humidity('30 %')),
  field('climate.humidityMost', 'Humidity, at most', humidity('85 %')),
  field('climate.materialLeast', 'Material, at least', temperature('60 °F')),
  field('climate.materialMost', 'Material, at most', temperature('85 °F')),
  field('climate.dewMargin', 'Slab over dew point', quantity('K', '5 °F')),
  field('climate.windMost', 'Wind, at most', quantity('m/s', '15 mph')),
  field('climate.onlyFalling', 'Only while the slab cools', FLAG),
]);

export const PRODUCT_PARTS: readonly Part[] = [
  group('Sheet', [
    field('name', 'Name', TEXT),
    field(
      'chemistry',
      'Chemistry',
      choice([
        'epoxy',
        'polyurea',
        'polyaspartic',
        'aromatic urethane',
        'aliphatic urethane',
        'acrylic',
        'cementitious urethane',
        'silicate',
      ]),
    ),
    field('sheet.name', 'Data sheet', TEXT),
    field('sheet.date', 'Dated', DATE),
    field('volumeSolids', 'Solids by volume', fact('1', '100 %')),
    field('voc', 'Solvent content', fact('kg/m³', '50 g/L')),
  ]),
  list('components', 'Components', {
    one: 'a component',
    title: named,
    begin: (items) => ({ id: freshId('part', items), name: `Part ${String.fromCharCode(65 + (items.length % 26))}` }),
    parts: [
      field('name', 'Name', TEXT),
      field('density', 'Density', fact('kg/m³', '1.1 kg/L')),
      field('addition', 'Added beside the ratio: tint, accelerator', FLAG),
    ],
  }),
  RATIO,
  field('mixName', 'Name of this mix', TEXT, 'Where the sheet allows others: standard hardener.'),
  list('packs', 'Packs', {
    one: 'a pack',
    title: named,
    begin: (items) => ({ id: freshId('kit', items), parts: [] }),
    parts: [
      field('name', 'Name', TEXT),
      list('parts', 'In it', {
        one: 'what is in it',
        title: (item) => said(item, 'component', 'volume'),
        begin: () => ({}),
        parts: [
          field('component', 'Component', { is: 'one of', from: componentNames }),
          field('volume', 'Volume', quantity('m³', '1 gal')),
        ],
      }),
      field('yields', 'Mixed, if less', quantity('m³', '2.9 gal')),
    ],
  }),
  field('partKits', 'Part of a kit may be mixed', FLAG),
  FILM,
  TIMES,
  group('Mixing', [...MIXING, field('humidityCured', 'Cures by humidity', FLAG)]),
  CLIMATE,
  list('mixes', 'Further mixes', {
    one: 'a mix',
    note: 'Another hardener to the same parts. What its sheet does not say stays empty and is taken from above.',
    title: named,
    begin: (items) => ({ id: freshId('mix', items), mix: [] }),
    parts: [
      field('name', 'Name', TEXT),
      field('sheet.name', 'Its own data sheet', TEXT),
      field('sheet.date', 'Dated', DATE),
      RATIO,
      field('volumeSolids', 'Solids by volume', fact('1', '100 %')),
      FILM,
      TIMES,
      group('Mixing', MIXING),
      CLIMATE,
    ],
  }),
  list('moisture', 'Moisture of the slab, at most', {
    one: 'a limit',
    title: (item) => said(item, 'method', 'humidity', 'emission', 'content'),
    begin: () => ({}),
    parts: [
      field('method', 'Method', choice(['ASTM F2170', 'ASTM F1869', 'BS 8203 hood', 'carbide'])),
      field('humidity', 'Humidity in the slab', fact('1', '85 %')),
      field('emission', 'Emission', fact('kg/(m² s)', '3 lb/1000 ft²·24 h')),
      field('content', 'Water by weight', fact('1', '4 %')),
    ],
  }),
  group('Concrete', [
    field('youngestConcrete', 'Youngest', fact('s', '28 d')),
    field('bondNeed', 'Pull-off, mean at least', fact('Pa', '200 psi')),
    field('bondLeast', 'Pull-off, each at least', fact('Pa', '150 psi')),
    field('profile.least', 'Profile from', number('2')),
    field('profile.most', 'Profile to', number('3')),
    field('profile.edition', 'Edition of the profiles', TEXT),
  ]),
  group('Thinner', [
    field('thinner.allowed', 'Allowed', three),
    field(
      'thinner.thinner',
      'Which',
      { is: 'one of', from: ownThinners },
      'A thinner of this catalogue, so that it is bought.',
    ),
    field('thinner.most', 'At most', fact('1', '5 %')),
    field('thinner.name', 'Name on the sheet', TEXT),
    field('thinner.density', 'Density', fact('kg/m³', '0.87 kg/L')),
    field('thinner.lengthensOpenTime', 'Lengthens the open time', three),
  ]),
  group('Dangers', [
    field('isocyanate', 'Isocyanate', FLAG),
    field('amine', 'Amine', FLAG),
    field('flash', 'Flash point', fact('°C', '100 °F')),
    field('solvent.name', 'Solvent', TEXT),
    field('solvent.density', 'Density of the solvent', fact('kg/m³', '0.88 kg/L')),
    field('solvent.molarMass', 'Molar mass', fact('kg/mol', '106 g/mol')),
    field('solvent.lowerExplosiveLimit', 'Lower explosive limit', fact('1', '1.0 %')),
  ]),
  group('More of the sheet', [
    field('light', 'In light', choice(['stable', 'yellows', 'not known'])),
    field('consumption.value', 'Litres an area, by the sheet', fact('m', '0.3 L/m²')),
    field('consumption.includes', 'That includes', {
      is: 'some of',
      from: () => ['film', 'profile', 'texture', 'loss'].map((id) => ({ id, name: id })),
    }),
  ]),
  list('properties', 'Properties with their tests', {
    one: 'a property',
    title: (item) => said(item, 'what', 'value', 'method'),
    begin: () => ({}),
    parts: [
      field(
        'what',
        'Property',
        TEXT,
        'As adhesion, slip, wear. A crack the film was shown to bridge is “crack bridging”: a class by EN 1062-7 A or B, or a width by “crack width shown”, with the temperature of the test.',
      ),
      field('value', 'Value', TEXT, 'Number with unit, a range “a to b”, “at least a”, or words.'),
      field('method', 'Test method', TEXT),
      field('failureMode', 'What failed', choice(['A', 'A/B', 'B', 'B/C', 'C', 'C/D', 'D', '-/Y', 'Y', 'Y/Z'])),
      group('Conditions of the test', CONDITIONS, 'Only what the sheet says.'),
    ],
  }),
];
