import { areaNames, drawnPoints, mixNames, productNames, toolNames } from './names-in-files.ts';
import { freshId, textAt } from './path.ts';
import {
  choice,
  DATE,
  DAY_OR_MOMENT,
  fact,
  field,
  group,
  LONG,
  list,
  MOMENT,
  number,
  quantity,
  SEEN,
  type Section,
  TEXT,
} from './spec.ts';

/** What is asked on site, in the order somebody walks it. */

const DEGREES = '68 °F';
const humidity = () => quantity('1', '52 %');
const temperature = () => quantity('°C', DEGREES);
const duration = (example: string) => quantity('s', example);
const TESTED = choice(['none found', 'found', 'not tested']);
const WHERE = { is: 'one of', from: drawnPoints } as const;

const COVERS = [
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
];

const place: Section = {
  id: 'place',
  title: 'Job and place',
  parts: [
    field('title', 'Title', TEXT),
    field('number', 'Number', TEXT),
    group('Customer', [
      field('customer.name', 'Name', TEXT),
      field('customer.address', 'Address', TEXT),
      field('customer.site', 'Site', TEXT),
    ]),
    group('Firm', [
      field('firm.name', 'Firm', TEXT),
      field('firm.by', 'By', TEXT),
      field('firm.contact', 'Contact', TEXT),
    ]),
    group('Place', [
      field('place.zone', 'Time zone', TEXT, 'Such as America/Denver. Times below are of this place.'),
      field('place.jurisdiction', 'Tax and rules of', TEXT, 'A place of the price book.'),
      field('place.latitude', 'Latitude', number('39.6'), 'Degrees, north is plus.'),
      field('place.longitude', 'Longitude', number('-105.1'), 'Degrees, west is minus.'),
      field('place.altitude', 'Height above the sea', quantity('m', '5280 ft')),
    ]),
    group('Papers', [
      field('reader.units', 'Units', choice(['imperial', 'metric'])),
      field('reader.paper', 'Paper', choice(['letter', 'a4'], { letter: 'Letter', a4: 'A4' })),
    ]),
    field('notes', 'Notes', LONG),
  ],
};

const building: Section = {
  id: 'building',
  title: 'Building and room',
  note: 'Before anything is switched on.',
  parts: [
    field('survey.on', 'Looked at on', DAY_OR_MOMENT),
    field('survey.by', 'By', TEXT),
    field('survey.building.year', 'Year built', number('1998')),
    field('survey.building.roomEmptied', 'Room emptied', SEEN),
    field('survey.building.occupiedBeside', 'People live or work beside it', SEEN),
    field('survey.building.airReturns', 'Air returns or vents in the room', SEEN),
    field('survey.building.water', 'Water on site', SEEN),
    field('survey.building.height', 'Height of the room', fact('m', '9 ft')),
    field('survey.building.access', 'Way in', LONG),
    field('survey.building.adjoiningRooms', 'Rooms beside it', LONG),
    field('survey.building.ignitionSources', 'Flames and sparks', LONG, 'Pilot flame, heater, freezer.'),
    group('Power', [
      field('survey.building.power.phases', 'Phases', number('1')),
      field('survey.building.power.voltage', 'Voltage', quantity('V', '240 V')),
      field('survey.building.power.current', 'Fuse', quantity('A', '30 A')),
    ]),
  ],
};

const onFloor: Section = {
  id: 'on-the-floor',
  title: 'On the floor',
  note: 'What lies on the slab. On an old floor, what may be in it before anybody grinds.',
  parts: [
    list('survey.onFloor', 'What lies on it', {
      one: 'a cover',
      title: (item) => [textAt(item, ['what']), textAt(item, ['since'])].filter(Boolean).join(', '),
      begin: (items) => ({ id: freshId('cover', items), what: 'not known' }),
      parts: [
        field('what', 'What', choice(COVERS)),
        field('since', 'Since the year', number('1999')),
        field('areas', 'In which rooms', { is: 'some of', from: areaNames }),
        field('extent', 'How much of the floor', fact('m²', '400 ft²')),
        field('thickness', 'How thick', fact('m', '7 mil')),
        field('asbestos', 'Asbestos', TESTED),
        field('lead', 'Lead', TESTED),
        field('testedBy', 'Tested by', TEXT, 'Laboratory and report.'),
        field('crossCuts.tried', 'Cross cuts tried', number('9')),
        field('crossCuts.failed', 'Cross cuts failed', number('0')),
      ],
    }),
  ],
};

const inTheSlab: Section = {
  id: 'slab',
  title: 'In and under the slab',
  parts: [
    group(
      'What runs in it',
      [
        field('survey.services.heatingPipes', 'Heating pipes', SEEN),
        field('survey.services.tendons', 'Tendons', SEEN),
        field('survey.services.cables', 'Cables', SEEN),
        field('survey.services.drains', 'Drains', SEEN),
      ],
      'Before drilling, cutting or deep grinding.',
    ),
    group('The concrete', [
      field('survey.slab.cast', 'Cast on', DATE),
      field('survey.slab.thickness', 'Thickness', fact('m', '4 in')),
      field('survey.slab.grade', 'Lies', choice(['on ground', 'below grade', 'suspended', 'not known'])),
      field('survey.slab.membrane', 'Vapour membrane under it', SEEN),
      field('survey.slab.membraneSource', 'Who says so', TEXT),
      field('survey.slab.finish', 'Finish', TEXT),
      field('survey.slab.compressiveStrength', 'Compressive strength', fact('Pa', '4000 psi')),
      field('survey.slab.scratch', 'Scratch hardness, Mohs', number('5.5')),
      field('survey.slab.falls', 'Falls', TEXT),
    ]),
  ],
};

const moisture: Section = {
  id: 'moisture',
  title: 'Moisture',
  parts: [
    list('survey.moisture.tests', 'Tests', {
      one: 'a moisture test',
      title: (item) =>
        [textAt(item, ['method']), textAt(item, ['where']), textAt(item, ['humidity']) || textAt(item, ['emission'])]
          .filter(Boolean)
          .join(', '),
      begin: (items) => ({ id: freshId('probe', items), method: textAt(items.at(-1), ['method']) || 'ASTM F2170' }),
      parts: [
        field(
          'method',
          'Method',
          choice(['ASTM F2170', 'ASTM F1869', 'BS 8203 hood', 'carbide', 'ASTM D4263', 'meter'], {
            'ASTM F2170': 'ASTM F2170, probe in the slab',
            'ASTM F1869': 'ASTM F1869, dish',
            'BS 8203 hood': 'BS 8203, hood on the slab',
            'ASTM D4263': 'ASTM D4263, plastic sheet',
            meter: 'hand meter',
            carbide: 'carbide bottle',
          }),
        ),
        field('edition', 'Edition', TEXT),
        field('where', 'Test point', WHERE),
        field('on', 'Read on', DAY_OR_MOMENT),
        field('humidity', 'Humidity in the slab', humidity()),
        field('depthShare', 'Depth of the probe', quantity('1', '40 %'), 'Share of the thickness.'),
        field('wait', 'Waited after drilling', duration('24 h')),
        field('serviceConditionsFor', 'Air as in use for', duration('72 h')),
        field('air', 'Air', temperature()),
        field('slab', 'Slab', temperature()),
        field('emission', 'Emission', quantity('kg/(m² s)', '3.1 lb/1000 ft²·24 h')),
        field('content', 'Water by weight', quantity('1', '3.2 %')),
        field('sheet', 'Under the sheet', choice(['dry', 'damp'])),
        field('massGain', 'Dish gained', quantity('kg', '4.2 g')),
        field('dishArea', 'Area of the dish', quantity('m²', '0.0465 m²')),
      ],
    }),
    group('Signs', [
      field('survey.moisture.signs.seepage', 'Water seeping', SEEN),
      field('survey.moisture.signs.saltLine', 'Salt line', SEEN),
      field('survey.moisture.signs.oldFilmBlisters', 'Blisters in the old film', SEEN),
      field('survey.moisture.signs.history', 'What is told', LONG),
      field('survey.moisture.wetSince', 'Wet on', DATE, 'Last flood or wet grinding: tests before it no longer count.'),
    ]),
  ],
};

const pullOffs: Section = {
  id: 'pull-off',
  title: 'Pull-off and preparation',
  parts: [
    list('survey.pullOffs', 'Pull-off tests', {
      one: 'a pull-off',
      title: (item) =>
        [textAt(item, ['where']), textAt(item, ['stress']) || textAt(item, ['force']), textAt(item, ['mode'])]
          .filter(Boolean)
          .join(', '),
      begin: (items) => ({ id: freshId('dolly', items) }),
      parts: [
        field('where', 'Test point', WHERE),
        field('on', 'Pulled on', DAY_OR_MOMENT),
        field('after', 'On what', choice(['preparation', 'as found', 'coating'], { preparation: 'prepared concrete' })),
        field('method', 'Method', TEXT),
        field('stress', 'Stress', quantity('Pa', '290 psi')),
        field('force', 'or force', quantity('N', '3.9 kN')),
        field('dolly', 'Dolly', quantity('m', '50 mm')),
        field(
          'mode',
          'What failed',
          choice(['A', 'A/B', 'B', 'B/C', 'C', 'C/D', 'D', '-/Y', 'Y', 'Y/Z'], {
            A: 'A, in the concrete',
            'A/B': 'A/B, between concrete and first coat',
            B: 'B, in the first coat',
            Y: 'Y, in the glue',
          }),
        ),
        field('glueShare', 'Share that failed in the glue', quantity('1', '10 %')),
      ],
    }),
    group('After preparation', [
      field('survey.afterPreparation.on', 'Looked at on', DAY_OR_MOMENT),
      field('survey.afterPreparation.dustTape', 'Tape on the dust', choice(['clean', 'dusty'])),
    ]),
    list('survey.afterPreparation.waterDrops', 'Drops of water', {
      one: 'a drop',
      title: (item) => [textAt(item, ['where']), textAt(item, ['result'])].filter(Boolean).join(', '),
      begin: () => ({}),
      parts: [field('where', 'Where', TEXT), field('result', 'It', choice(['soaks in', 'stays']))],
    }),
    list('survey.afterPreparation.profiles', 'Profiles', {
      one: 'a profile',
      title: (item) => [textAt(item, ['where']), textAt(item, ['profile'])].filter(Boolean).join(', profile '),
      begin: () => ({}),
      parts: [
        field('where', 'Where', TEXT),
        field('profile', 'Profile', number('2'), 'By the replica set, 1 to 10.'),
        field('edition', 'Edition of the set', TEXT),
      ],
    }),
    group('Test patch', [
      field('survey.testPatch.on', 'Ground on', DAY_OR_MOMENT),
      field('survey.testPatch.where', 'Test point', WHERE),
      field('survey.testPatch.method', 'Method', TEXT, 'As the catalogue names it: grind.'),
      field('survey.testPatch.tool', 'Tool', { is: 'one of', from: toolNames }),
      field('survey.testPatch.area', 'Area', quantity('m²', '16 ft²')),
      field('survey.testPatch.time', 'Time', duration('3.6 min')),
      field('survey.testPatch.profile', 'Profile', number('2')),
      field('survey.testPatch.wear', 'Tooling', choice(['normal', 'glazed', 'fast'])),
    ]),
  ],
};

const climate: Section = {
  id: 'climate',
  title: 'Air and slab',
  parts: [
    list('survey.climate', 'Readings', {
      one: 'a reading',
      title: (item) =>
        [
          textAt(item, ['at']).slice(0, 16).replace('T', ' '),
          textAt(item, ['air']),
          textAt(item, ['humidity']),
          textAt(item, ['slab']) ? `slab ${textAt(item, ['slab'])}` : '',
        ]
          .filter(Boolean)
          .join(', '),
      begin: () => ({}),
      parts: [
        field('at', 'Read at', MOMENT),
        field('where', 'Test point', WHERE),
        field('air', 'Air', temperature()),
        field('humidity', 'Humidity', humidity()),
        field('slab', 'Slab', temperature()),
        field('material', 'Resin in its pail', temperature()),
        field('pressure', 'Pressure', quantity('Pa', '1013 hPa')),
      ],
    }),
    group('How the room stands to the weather', [
      field('survey.exposure.kind', 'It is', choice(['closed garage', 'open garage', 'heated room', 'patio'])),
      field('survey.exposure.room', 'Air of the heated room', quantity('°C', DEGREES)),
      field('survey.exposure.heater', 'Warmed by', choice(['none', 'electric or vented', 'unvented flame'])),
      field('survey.exposure.base', 'Gravel under the slab', fact('m', '4 in')),
    ]),
    list('survey.exposure.doors', 'Doors open', {
      one: 'a stretch',
      title: (item) => [textAt(item, ['from']).slice(0, 16), textAt(item, ['until']).slice(11, 16)].join(' to '),
      begin: () => ({}),
      parts: [field('from', 'From', MOMENT), field('until', 'Until', MOMENT)],
    }),
    list('survey.removalPatches', 'Taken off and timed', {
      one: 'a piece taken off',
      note: 'Tile, levelling coat and oil have no rate from memory: time a piece of it, or enter your own rate.',
      title: (item) => [textAt(item, ['what']), textAt(item, ['area'])].filter(Boolean).join(', '),
      begin: () => ({}),
      parts: [
        field('what', 'What', choice(['tile', 'levelling coat', 'oil'])),
        field('on', 'On', DAY_OR_MOMENT),
        field('where', 'Test point', WHERE),
        field('area', 'Area', quantity('m²', '16 ft²')),
        field('time', 'Time of one person', duration('20 min')),
      ],
    }),
    list('survey.openTimeTests', 'Own tests of open time', {
      one: 'a test',
      title: (item) => [textAt(item, ['product']), textAt(item, ['slab'])].filter(Boolean).join(', '),
      begin: () => ({ ties: [] }),
      parts: [
        field('product', 'Product', { is: 'one of', from: productNames }),
        field('mix', 'Mixed with', { is: 'one of', from: mixNames }, 'Only where it was not its first mix.'),
        field('on', 'On', DAY_OR_MOMENT),
        field('slab', 'Slab', temperature()),
        field('humidity', 'Humidity', humidity()),
        list('ties', 'Tied in after', {
          one: 'a lap',
          title: (item) => textAt(item, ['after']),
          begin: () => ({ vanished: false }),
          parts: [field('after', 'After', duration('12 min')), field('vanished', 'The lap vanished', { is: 'answer' })],
        }),
      ],
    }),
  ],
};

const use: Section = {
  id: 'use',
  title: 'Use of the floor',
  parts: [
    field('use.traffic', 'Traffic', choice(['foot', 'light', 'vehicle', 'forklift'])),
    field('use.hotTyres', 'Hot tyres', SEEN),
    field('use.water', 'Water', choice(['dry', 'washed', 'often wet'])),
    field('use.sun', 'Sun on it', SEEN),
    field('use.slip', 'Grip', choice(['smooth', 'some grip', 'much grip'])),
    field('use.smellMatters', 'Smell matters', SEEN),
    field('use.chemicals', 'What is spilt', { is: 'lines' }, 'One a line.'),
    field('use.footBy', 'Walked on by', MOMENT),
    field('use.vehicleBy', 'Driven on by', MOMENT),
    list('use.needs', 'Must-haves of this job', {
      one: 'a must-have',
      title: (item) => [textAt(item, ['what']), textAt(item, ['least'])].filter(Boolean).join(', '),
      begin: () => ({}),
      parts: [
        field('what', 'Property', TEXT),
        field('least', 'Least it must show', TEXT),
        field('method', 'By the method', TEXT),
        field('why', 'Why', LONG),
        field('waived', 'It does not matter on this floor', { is: 'flag' }),
      ],
    }),
    field('budget.amount', 'The customer may spend', { is: 'amount', example: '4500.00' }),
    field('budget.currency', 'in', TEXT, 'Three letters, such as USD.'),
  ],
};

/** What the authority of the place says, as the firm read it. Nothing here is filled in for anybody. */
const rules: Section = {
  id: 'rules',
  title: 'Rules and season of the place',
  note: 'Only what somebody read in a document: name it with its date. Nothing here is filled in for you.',
  parts: [
    list('place.vocLimits', 'Most VOC a coating may hold there', {
      one: 'a limit',
      title: (item) => [textAt(item, ['category']), textAt(item, ['limit'])].filter(Boolean).join(', '),
      begin: () => ({}),
      parts: [
        field('category', 'Category', TEXT, 'As the document names it.'),
        field('limit', 'Limit', quantity('kg/m³', '100 g/L')),
        field(
          'basis',
          'Stated per litre',
          choice(['less water and exempt', 'as used'], {
            'less water and exempt': 'without water and exempt solvents',
            'as used': 'as it is used',
          }),
        ),
        field('source', 'Document', TEXT),
        field('date', 'In force from', DATE),
        field('products', 'Only for', { is: 'some of', from: productNames }, 'None ticked: for every product.'),
      ],
    }),
    list('place.exempt', 'Solvents that do not count there', {
      one: 'a solvent',
      title: (item) => textAt(item, ['solvent']),
      begin: () => ({}),
      parts: [
        field('solvent', 'Solvent', TEXT, 'As the data sheet names it.'),
        field('source', 'Document', TEXT),
        field('date', 'In force from', DATE),
      ],
    }),
    group(
      'Coldest and hottest the slab gets in a year',
      [
        field('place.season.coldest', 'Coldest', temperature()),
        field('place.season.hottest', 'Hottest', temperature()),
        field('place.season.source', 'Who says so', TEXT),
      ],
      'For cracks and joints that move.',
    ),
  ],
};

const sideOf = (index: 0 | 1) =>
  group(index === 0 ? 'In the one room' : 'In the other room', [
    field(`sides.${index}.area`, 'Room', { is: 'one of', from: areaNames }),
    field(`sides.${index}.from`, 'From', { is: 'point' }),
    field(`sides.${index}.to`, 'To', { is: 'point' }),
  ]);

const doors: Section = {
  id: 'doors',
  title: 'Doors between rooms',
  note: 'The same opening as each of its two rooms has it, in the coordinates of that room.',
  parts: [
    list('doors', 'Doors', {
      one: 'a door',
      title: (item) =>
        [
          textAt(item, ['name']) || textAt(item, ['id']),
          [textAt(item, ['sides', 0, 'area']), textAt(item, ['sides', 1, 'area'])].filter(Boolean).join(' – '),
        ].join(', '),
      begin: (items) => ({ id: freshId('door', items), sides: [{}, {}] }),
      parts: [
        field('name', 'Name', TEXT),
        sideOf(0),
        sideOf(1),
        field('wall', 'Thickness of the wall', quantity('m', '6 in')),
        field('shut', 'Kept shut', { is: 'flag' }, 'Nobody walks through and nothing is spread through.'),
      ],
    }),
  ],
};

export const SURVEY_SECTIONS: readonly Section[] = [
  place,
  building,
  doors,
  onFloor,
  inTheSlab,
  moisture,
  pullOffs,
  climate,
  use,
  rules,
];
