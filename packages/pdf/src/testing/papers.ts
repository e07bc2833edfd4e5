import type { Block, Entry, Paper, PaperKind, Said, Voice } from '@slabwright/core';
import { voice as coreVoice, show } from '@slabwright/core';

/** Invented papers for tests: texts are said as they stand, figures come from a handful of entries. */

export const text = (words: string): Said => ({ code: words });

const given = (id: string, value: number, unit: Entry['unit'], more: Partial<Entry> = {}): Entry =>
  ({ kind: 'given', id, value, unit, origin: 'reading', where: 'test point 2', ...more }) as Entry;

export const ENTRIES: Readonly<Record<string, Entry>> = Object.fromEntries(
  [
    given('area.net', 40.41, 'm²', { shows: 'area' }),
    given('price', 495_800, 'money', { origin: 'price' }),
    given('extra.lanes', 18_000, 'money', { origin: 'price' }),
    given('extra.primer', 130_500, 'money', { origin: 'price' }),
    given('moisture', 0.76, '1', { shows: 'humidity', band: [0.74, 0.78] }),
    given('moisture.most', 0.85, '1', { shows: 'humidity', origin: 'data sheet' }),
    given('pull', 1.9e6, 'Pa', { shows: 'stress' }),
    given('crack', 2.794, 'm', { shows: 'length' }),
    given('oil', 0.604, 'm²', { shows: 'area' }),
    given('slab', 21.7, '°C', { shows: 'temperature' }),
    given('part', 0.00265, 'm³', { shows: 'volume' }),
  ].map((entry) => [entry.id, entry]),
);

export function testVoice(units: 'imperial' | 'metric', language: 'en' | 'es' = 'en', entries = ENTRIES): Voice {
  const reader = { locale: language === 'es' ? 'es-US' : 'en-US', units, currency: 'USD' };
  const base = coreVoice(language, reader, entries);
  const words: Readonly<Record<string, string>> = {
    'verdict-go': 'go',
    'verdict-caution': 'with care',
    'verdict-stop': 'stop',
    'verdict-not-known': 'not known',
  };
  const figures = (said: Said): Readonly<Record<string, string>> =>
    Object.fromEntries(Object.entries(said.figures ?? {}).map(([name, id]) => [name, show(base.entry(id), reader)]));
  const say = (said: Said): string =>
    Object.entries({ ...figures(said), ...(said.names ?? {}) }).reduce(
      (words, [name, value]) => words.replaceAll(`{${name}}`, value),
      said.code,
    );
  return { ...base, say, word: (key) => words[key] ?? key };
}

const FOOT = 0.3048;
const feet = (...points: readonly (readonly [number, number])[]): readonly (readonly [number, number])[] =>
  points.map(([x, y]) => [x * FOOT, y * FOOT] as const);
const foot = (x: number, y: number): readonly [number, number] => [x * FOOT, y * FOOT];

export const GARAGE = {
  area: 'garage',
  name: 'Garage',
  outline: feet([0, 0], [20, 0], [20, 21], [8.5, 21], [8.5, 24], [3, 24], [3, 21], [0, 21]),
  holes: [],
  net: 'area.net',
  dimensions: true,
  marks: [
    { kind: 'exit', from: foot(2, 0), to: foot(18, 0), shut: false, label: { name: 'overhead door' } },
    { kind: 'exit', from: foot(20, 14), to: foot(20, 17), shut: true, label: { name: 'house door, taped shut' } },
    { kind: 'joint', along: feet([10, 0], [10, 21]) },
    { kind: 'joint', along: feet([0, 10.5], [20, 10.5]), label: { name: 'saw cuts, kept' } },
    { kind: 'crack', along: feet([4, 2], [7, 9], [6.5, 10.5]), label: { say: text('crack, 9 ft 2 in') } },
    { kind: 'spot', at: foot(14, 6), radius: 1.45 * FOOT, what: 'oil', label: { say: text('oil, drawn out twice') } },
  ],
} as const satisfies Extract<Block, { kind: 'floor' }>['drawing'];

const PROPOSAL: readonly Block[] = [
  {
    kind: 'headline',
    text: text('Your garage floor, ground and coated in one day'),
    under: text('One visit on Wednesday 13 May. You walk on it that night and drive on it by the weekend.'),
  },
  {
    kind: 'floor',
    drawing: GARAGE,
    beside: [
      { kind: 'heading', text: text('What you get') },
      {
        kind: 'section',
        layers: [
          {
            kind: 'concrete',
            title: { name: 'Your slab, ground to profile 2' },
            note: { name: 'oil drawn out, crack filled' },
          },
          { kind: 'film', title: { name: 'Base, 10 mils' }, note: { name: 'wets into the ground concrete' } },
          { kind: 'broadcast', title: { name: 'Colored flake' }, note: { name: 'thrown until it takes no more' } },
          { kind: 'film', title: { name: 'Clear, 10 mils dry' }, note: { name: 'takes the wear, does not yellow' } },
        ],
      },
      {
        kind: 'paragraph',
        content: [
          { name: 'The slab, not the coating, sets how hard the floor holds on: it let go at' },
          { entry: 'pull' },
          { name: 'at its weakest.' },
        ],
      },
    ],
  },
  {
    kind: 'big-figures',
    figures: [
      {
        label: text('Price'),
        value: { entry: 'price' },
        under: text('$11.40 a square foot, before tax. Valid to 28 May.'),
      },
      {
        label: text('Shoes again'),
        value: { name: 'Wed 22:00' },
        under: text('between 21:20 and 22:50, as the nights look now.'),
      },
      {
        label: text('Cars again'),
        value: { name: 'Fri 17:00' },
        under: text('likely by 20:00 while the slab stays at 59 °F or more.'),
      },
    ],
  },
  {
    kind: 'columns',
    left: [
      { kind: 'heading', text: text('What we found on 28 April') },
      {
        kind: 'facts',
        rows: [
          { label: { name: 'Moisture in the slab, 3 probes, 24 h' }, value: { entry: 'moisture', band: true } },
          {
            label: { name: 'Most the system bears' },
            value: { entry: 'moisture.most' },
            note: { name: 'data sheet of the base, June 2025' },
          },
          { label: { name: 'Hold of the ground surface, least of 3' }, value: { entry: 'pull' } },
          { label: { name: 'One crack, not moving' }, value: { entry: 'crack' } },
          { label: { name: 'Old oil by the right-hand bay' }, value: { entry: 'oil' } },
          { label: { name: 'Old coating' }, value: { name: 'none' } },
        ],
      },
    ],
    right: [
      { kind: 'heading', text: text('Priced now, so nothing is a surprise') },
      {
        kind: 'table',
        columns: [{ head: text('only if') }, { head: text('adds'), align: 'right' }],
        rows: [
          [{ name: 'Grit in the two tire lanes' }, { entry: 'extra.lanes' }],
          [{ name: 'Moisture primer, only if a probe on the day reads over the limit' }, { entry: 'extra.primer' }],
        ],
        total: [{ name: 'All of it' }, { entry: 'price' }],
      },
    ],
  },
  { kind: 'heading', text: text('What stands in the way') },
  {
    kind: 'verdict',
    word: 'go',
    title: text('moisture'),
    lines: [text('All three probes lie below the limit of the sheet.')],
  },
  {
    kind: 'verdict',
    word: 'caution',
    title: text('dew point'),
    lines: [text('The slab comes near the dew point after 20:00.')],
  },
  { kind: 'verdict', word: 'stop', title: text('bond'), lines: [text('No pull-off after grinding.')] },
  {
    kind: 'verdict',
    word: 'not known',
    title: text('old coating'),
    lines: [text('What the floor was cured with is not known.')],
  },
  { kind: 'list', marks: 'dash', lines: [{ name: 'the house step' }, { name: 'moving your things' }] },
  {
    kind: 'frame',
    title: text('Tax'),
    text: text('The rule of the place, its document and date, entered by the firm:'),
    lines: 2,
  },
  { kind: 'signatures', fields: [text('For the firm, date'), text('For the owner, date')] },
];

const CREW: readonly Block[] = [
  { kind: 'headline', text: text('Clear coat'), under: text('Ashgrove Lane garage · sheet 2 of 2') },
  {
    kind: 'boxed',
    strong: true,
    lines: [text('Nitrile gloves. Long sleeves taped to them. Eyes covered. Spiked shoes. No bare skin.')],
  },
  {
    kind: 'floor',
    drawing: {
      ...GARAGE,
      dimensions: false,
      marks: [
        GARAGE.marks[0],
        GARAGE.marks[1],
        { kind: 'stop line', along: feet([0, 14.5], [20, 14.5]), label: { name: 'line 1: 14 ft 6 in' } },
        { kind: 'stop line', along: feet([0, 7.25], [20, 7.25]), label: { name: 'line 2: 7 ft 3 in' } },
      ],
    },
    beside: [
      {
        kind: 'paragraph',
        content: [{ name: 'Ines rolls, Walt mixes.', strong: true }, { name: 'Every lane starts on the left.' }],
      },
      {
        kind: 'paragraph',
        content: [
          { name: 'Each batch:', strong: true },
          { entry: 'part' },
          { name: 'of A and' },
          { entry: 'part' },
          { name: 'of B.' },
        ],
      },
    ],
  },
  {
    kind: 'table',
    columns: [
      { head: text('pour') },
      { head: text('part A'), align: 'right' },
      { head: text('mix') },
      { head: text('rolled by') },
      { head: text('end line, from door') },
      { head: text('mixed at'), blank: true },
      { head: text('line at'), blank: true },
    ],
    rows: [1, 2, 3].map((pour) => [
      { name: String(pour), strong: true },
      { entry: 'part', strong: true },
      { name: `16:${pour}5`, strong: true },
      { name: `16:${pour + 1}4`, strong: true },
      { name: ['14 ft 6 in', '7 ft 3 in', 'door'][pour - 1] ?? '' },
      { name: '' },
      { name: '' },
    ]),
  },
  {
    kind: 'columns',
    left: [
      { kind: 'heading', text: text('If the slab is not 71 °F') },
      {
        kind: 'table',
        columns: [{ head: text('slab') }, { head: text('rolled by') }, { head: text('pours'), align: 'right' }],
        rows: [
          [{ name: '60 °F', strong: true }, { name: '28 min' }, { name: '3' }],
          [{ name: '86 °F', strong: true }, { name: '10 min' }, { name: '6' }],
        ],
      },
    ],
    right: [
      { kind: 'heading', text: text('Stop and call if') },
      {
        kind: 'list',
        marks: 'stop',
        lines: [{ name: 'slab less than 5.4 °F over dew point' }, { name: 'a pail gets hot: outside, do not lid it' }],
      },
      { kind: 'list', marks: 'box', lines: [{ name: 'fan running' }] },
    ],
  },
];

export const paper = (blocks: readonly Block[], more: Partial<Paper> = {}): Paper => ({
  kind: 'proposal',
  language: 'en',
  title: text('Proposal 26-041'),
  head: {
    left: ['Orrell Concrete Floors', 'Ines Orrell, owner and installer'],
    right: [{ name: 'Proposal 26-041 · 28 April 2026' }, { name: 'for Dana Whitlock, 14 Ashgrove Lane' }],
  },
  foot: text('Drawn to scale. Every figure can be traced to a reading, a data sheet or a price.'),
  blocks,
  mark: '7F2C 91',
  at: '2026-04-28T09:30:00-07:00',
  overrides: [],
  ...more,
});

export const samplePaper = (kind: Extract<PaperKind, 'proposal' | 'crew-sheet'>): Paper =>
  paper(kind === 'proposal' ? PROPOSAL : CREW, {
    kind,
    ...(kind === 'crew-sheet' ? { title: text('Clear coat') } : {}),
  });
