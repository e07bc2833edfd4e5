import { freshId, type Raw, textAt } from './path.ts';
import {
  choice,
  DAY_OR_MOMENT,
  FLAG,
  fact,
  field,
  group,
  list,
  MOMENT,
  number,
  type Part,
  quantity,
  SEEN,
  TEXT,
} from './spec.ts';

/** What lies on the floor of one room, beside its outline. All of it can be typed here or drawn. */

const named = (item: Raw): string => textAt(item, ['name']) || textAt(item, ['id']);
const points = (least: number) => ({ is: 'points', least }) as const;
const POINT = { is: 'point' } as const;
const small = (example: string) => fact('m', example);

export const FLOOR_PARTS: readonly Part[] = [
  list('exits', 'Doors and ways out', {
    one: 'a door',
    title: named,
    begin: (items) => ({ id: freshId('exit', items) }),
    parts: [
      field('name', 'Name', TEXT),
      field('from', 'From', POINT),
      field('to', 'To', POINT),
      field('outside', 'Leads outside', FLAG),
      field('shut', 'Kept shut', FLAG),
    ],
  }),
  list('holes', 'Holes: columns, pads, pits', {
    one: 'a hole',
    title: named,
    begin: (items) => ({ id: freshId('hole', items) }),
    parts: [field('name', 'Name', TEXT), field('outline', 'Outline', points(3))],
  }),
  list('joints', 'Joints', {
    one: 'a joint',
    title: (item) => [textAt(item, ['kind']), textAt(item, ['width'])].filter(Boolean).join(', '),
    begin: (items) => ({ id: freshId('joint', items), kind: 'contraction' }),
    parts: [
      field('kind', 'Kind', choice(['isolation', 'contraction', 'construction'])),
      field('along', 'Along', points(2)),
      field('width', 'Width', small('1/8 in')),
      field('depth', 'Depth', small('1 in')),
      field('bondBreaker', 'Tape over it', quantity('m', '0 mm'), 'Width of film that lies free of the slab.'),
    ],
  }),
  list('cracks', 'Cracks', {
    one: 'a crack',
    title: (item) => textAt(item, ['id']),
    begin: (items) => ({ id: freshId('crack', items), widths: [] }),
    parts: [
      field('along', 'Along', points(2)),
      list('widths', 'Widths read', {
        one: 'a width',
        title: (item) => [textAt(item, ['width']), textAt(item, ['on']).slice(0, 10)].filter(Boolean).join(', '),
        begin: () => ({}),
        parts: [
          field('width', 'Width', quantity('m', '0.8 mm')),
          field('on', 'Read on', DAY_OR_MOMENT),
          field('slab', 'Slab then', quantity('°C', '57 °F'), 'A crack is read cold and warm.'),
        ],
      }),
      field('moves', 'It moves', SEEN),
      field('step', 'One side higher by', quantity('m', '0 mm')),
      field('bondBreaker', 'Tape over it', quantity('m', '0 mm')),
    ],
  }),
  list('spots', 'Spots', {
    one: 'a spot',
    title: (item) =>
      [textAt(item, ['kind']), textAt(item, ['area']) || textAt(item, ['area', 'value'])].filter(Boolean).join(', '),
    begin: (items) => ({ id: freshId('spot', items) }),
    parts: [
      field('kind', 'Kind', choice(['oil', 'spall', 'pit', 'old film', 'soft concrete', 'ponding', 'drain'])),
      field('at', 'Where', POINT),
      field('area', 'How large', fact('m²', '6 ft²')),
      field('depth', 'How deep', small('1/4 in')),
      field('waterDrop', 'A drop of water there', choice(['soaks in', 'stays', 'not tested'])),
    ],
  }),
  list('points', 'Test points', {
    one: 'a test point',
    title: named,
    begin: (items) => ({ id: freshId('p', items) }),
    parts: [field('name', 'Name', TEXT), field('at', 'Where', POINT)],
  }),
  list('walls', 'Walls standing free', {
    one: 'a wall',
    title: () => '',
    begin: () => ({}),
    parts: [field('from', 'From', POINT), field('to', 'To', POINT)],
  }),
  list('stemWalls', 'Stem walls', {
    one: 'a stem wall',
    title: (item) => [textAt(item, ['id']), textAt(item, ['length'])].filter(Boolean).join(', '),
    begin: (items) => ({ id: freshId('stem-wall', items) }),
    parts: [field('length', 'Length', fact('m', '69 ft')), field('height', 'Height', small('6 in'))],
  }),
  list('coves', 'Coves', {
    one: 'a cove',
    title: (item) => [textAt(item, ['id']), textAt(item, ['length'])].filter(Boolean).join(', '),
    begin: (items) => ({ id: freshId('cove', items) }),
    parts: [field('length', 'Length', fact('m', '40 ft')), field('radius', 'Radius', small('1 in'))],
  }),
  list('steps', 'Steps', {
    one: 'a flight',
    title: (item) => textAt(item, ['id']),
    begin: (items) => ({ id: freshId('steps', items) }),
    parts: [
      field('risers', 'Risers', number('3')),
      field('riser', 'Height of one', small('7 in')),
      field('tread', 'Tread', small('11 in')),
      field('width', 'Width', fact('m', '4 ft')),
    ],
  }),
  group('Surface', [
    field(
      'profileDepth',
      'Mean depth of the ground profile',
      fact('m', '0.05 mm'),
      'Replica putty or your own figure.',
    ),
    field('doorEdge', 'Edge at the open door', choice(['keyed', 'feathered', 'not known'])),
  ]),
  list('sun', 'Sun on the floor', {
    one: 'a sunny patch',
    title: (item) =>
      [textAt(item, ['from']).slice(0, 16), textAt(item, ['until']).slice(11, 16)].filter(Boolean).join(' to '),
    begin: (items) => ({ id: freshId('sun', items) }),
    parts: [field('outline', 'Outline', points(3)), field('from', 'From', MOMENT), field('until', 'Until', MOMENT)],
  }),
];
