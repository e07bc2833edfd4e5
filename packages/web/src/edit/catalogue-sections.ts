import { ownMedia, ownMixes, ownProducts } from './names-in-files.ts';
import { freshId } from './path.ts';
import { named, PRODUCT_PARTS, said } from './product-parts.ts';
import { choice, FLAG, fact, field, group, list, number, type Part, quantity, type Section, TEXT } from './spec.ts';

/** A catalogue: products, systems built of them, tools and the firm's own rates. */

const profileOf = (label: string): Part =>
  group(label, [field('profile.least', 'From', number('2')), field('profile.most', 'To', number('3'))]);

const TASKS = [
  'set-up',
  'mask',
  'grind',
  'second-pass',
  'remove-film',
  'remove-tile',
  'remove-levelling',
  'oil-treat',
  'edge',
  'edge-through-film',
  'crack-fill',
  'crack-reinforce',
  'joint-fill',
  'patch',
  'vacuum',
  'stem-prep',
  'shot-blast',
  'scarify',
  'mix',
  'mix-large',
  'cut-in',
  'squeegee',
  'back-roll',
  'roll-thin',
  'broadcast-flake',
  'broadcast-quartz',
  'scrape',
  'screen',
  'stem-coat',
  'stem-roll',
  'joint-recut-and-fill',
  'pack-and-hand-over',
];

const LAYER: readonly Part[] = [
  field('name', 'Name', TEXT),
  field('product', 'Product', { is: 'one of', from: ownProducts }),
  field('mix', 'Mixed as', { is: 'one of', from: ownMixes }, 'Only where it is not the first mix.'),
  field('wetFilm', 'Wet film', fact('m', '10 mil')),
  field('dryFilm', 'or dry film', fact('m', '8 mil')),
  field('wetFilmVertical', 'Wet film on walls', fact('m', '8 mil')),
  field('verticals', 'Goes on walls too', FLAG),
  field('onConcrete', 'First coat on concrete', FLAG),
  field('porosity', 'Drawn into the concrete', fact('m', '0.05 mm')),
  field('textureDepth', 'Fills a broadcast of', fact('m', '0.2 mm')),
  field('broadcast.media', 'Broadcast with', { is: 'one of', from: ownMedia }),
  field('broadcast.thrown', 'Thrown', fact('kg/m²', '0.15 lb/ft²')),
  field('broadcast.kept', 'Kept', fact('kg/m²', '0.1 lb/ft²')),
  field('broadcast.verticals', 'Broadcast on walls too', FLAG),
  field('broadcast.toRefusal', 'To refusal', FLAG),
  field('surplus', 'Surplus', fact('1', '8 %')),
  field('loss', 'Loss', fact('1', '3 %')),
  field('reserve', 'Kept back', fact('1', '5 %')),
  field('work', 'Kind of work', TEXT),
];

export const CATALOGUE_SECTIONS: readonly Section[] = [
  {
    id: 'products',
    title: 'Products',
    note: 'Typed from the data sheet in front of you; what it does not say stays empty.',
    parts: [
      list('products', 'Products', {
        one: 'a product',
        title: named,
        begin: (items) => ({
          id: freshId('product', items),
          components: [
            { id: 'a', name: 'Part A' },
            { id: 'b', name: 'Part B' },
          ],
          mix: [{ component: 'a' }, { component: 'b' }],
          packs: [],
        }),
        parts: PRODUCT_PARTS,
      }),
    ],
  },
  {
    id: 'systems',
    title: 'Systems',
    parts: [
      list('systems', 'Systems', {
        one: 'a system',
        title: named,
        begin: (items) => ({ id: freshId('system', items), layers: [] }),
        parts: [
          field('name', 'Name', TEXT),
          profileOf('Profile it wants'),
          list('layers', 'Coats, from the concrete up', {
            one: 'a coat',
            title: (item) => said(item, 'name', 'product'),
            begin: (items) => ({ id: freshId('coat', items), ...(items.length === 0 ? { onConcrete: true } : {}) }),
            parts: LAYER,
          }),
        ],
      }),
      list('media', 'Flake, quartz and the like', {
        one: 'a broadcast',
        title: named,
        begin: (items) => ({ id: freshId('media', items) }),
        parts: [field('name', 'Name', TEXT), field('bag', 'Bag', fact('kg', '40 lb'))],
      }),
      list('thinners', 'Thinners', {
        one: 'a thinner',
        title: named,
        begin: (items) => ({ id: freshId('thinner', items), packs: [] }),
        parts: [
          field('name', 'Name', TEXT),
          field('density', 'Density', fact('kg/m³', '0.87 kg/L')),
          list('packs', 'Tins', {
            one: 'a tin',
            title: named,
            begin: (items) => ({ id: freshId('tin', items) }),
            parts: [field('name', 'Name', TEXT), field('volume', 'In it', quantity('m³', '1 gal'))],
          }),
        ],
      }),
      list('fillers', 'Fillers for cracks and joints', {
        one: 'a filler',
        note: 'Of several for one kind the first is taken.',
        title: named,
        begin: (items) => ({ id: freshId('filler', items), packs: [] }),
        parts: [
          field('name', 'Name', TEXT),
          field('kinds', 'Used', {
            is: 'some of',
            from: () => [
              { id: 'rigid', name: 'rigid, where nothing moves' },
              { id: 'flexible', name: 'flexible, where something moves' },
            ],
          }),
          list('packs', 'Packs', {
            one: 'a pack',
            title: named,
            begin: (items) => ({ id: freshId('pack', items) }),
            parts: [field('name', 'Name', TEXT), field('volume', 'In it', quantity('m³', '600 mL'))],
          }),
        ],
      }),
    ],
  },
  {
    id: 'tools',
    title: 'Tools and rates',
    parts: [
      list('tools', 'Tools', {
        one: 'a tool',
        title: named,
        begin: (items) => ({ id: freshId('tool', items) }),
        parts: [
          field('name', 'Name', TEXT),
          field('method', 'For', choice(['grind', 'shot-blast', 'scarify', 'abrasive-blast', 'scabble', 'vacuum'])),
          field('width', 'Width', quantity('m', '20 in')),
          field('mass', 'Weight', quantity('kg', '180 kg')),
          field('power', 'Power', quantity('W', '4 kW')),
          field('phases', 'Phases', number('1')),
          field('voltage', 'Voltage', quantity('V', '240 V')),
          field('powerFactor', 'Power factor', number('0.9')),
          field('efficiency', 'Efficiency', number('0.9')),
          field('airflow', 'Air', quantity('m³/s', '180 cfm')),
          field('wheel', 'Wheel', quantity('m', '7 in')),
        ],
      }),
      list('rates', 'Your own rates', {
        one: 'a rate',
        note: 'How fast one person does it, with the least and the most you have seen. One of the three.',
        title: (item) => said(item, 'task', 'area', 'length', 'whole'),
        begin: () => ({}),
        parts: [
          field('task', 'Work', choice(TASKS)),
          field('area', 'Area an hour', fact('m²/s', '25 m²/h')),
          field('length', 'Length an hour', fact('m/s', '15 m/h')),
          field('whole', 'All of it', fact('s', '2 h')),
        ],
      }),
    ],
  },
];
