import { areaNames, layerNames, systemNames, uprightNames } from './names-in-files.ts';
import { freshId, textAt } from './path.ts';
import { FLAG, fact, field, group, LONG, list, MOMENT, number, quantity, type Section, TEXT } from './spec.ts';

/** Ways to do the job, side by side. */
export const OPTIONS: Section = {
  id: 'options',
  title: 'Options',
  note: 'Each is one system on some rooms; they stand side by side until one is accepted.',
  parts: [
    list('options', 'Options', {
      one: 'an option',
      title: (item) => [textAt(item, ['name']), textAt(item, ['system'])].filter(Boolean).join(': '),
      begin: (items) => ({ id: freshId('option', items), name: `Option ${items.length + 1}`, people: 2 }),
      parts: [
        field('name', 'Name', TEXT),
        field('system', 'System', { is: 'one of', from: systemNames }),
        field('areas', 'Rooms', { is: 'some of', from: areaNames }),
        field('people', 'People', number('2')),
        field('dedicatedMixer', 'One of them only mixes', { is: 'answer' }, 'Left open: so from three people on.'),
        field('accepted', 'Accepted', FLAG),
        field('leaveOut', 'Left bare', { is: 'some of', from: uprightNames }),
        field(
          'coatOver',
          'Joints coated over all the same',
          { is: 'lines' },
          'Their names on the plan, one a line. A line comes back there; otherwise they are cut again and filled.',
        ),
        group('Preparation', [
          field('preparation.method', 'Method', TEXT, 'As grind, scarify or shot-blast; empty: the plan proposes one.'),
          field('preparation.passes', 'Passes', number('1')),
          field('preparation.removal', 'Removal', TEXT),
        ]),
        group('Hours', [
          field('workday.from', 'Work from', { is: 'clock', example: '07:00' }),
          field('workday.until', 'until', { is: 'clock', example: '17:00' }),
          field('paidHours', 'Hours paid', fact('s', '24 h'), 'When the firm already knows them.'),
          field('contingency', 'Kept back', fact('1', '10 %')),
        ]),
        list('starts', 'Starts of the coats', {
          one: 'a start',
          title: (item) => [textAt(item, ['layer']), textAt(item, ['at']).slice(0, 16).replace('T', ' ')].join(', '),
          begin: () => ({}),
          parts: [field('layer', 'Coat', { is: 'one of', from: layerNames }), field('at', 'Starts', MOMENT)],
        }),
        group(
          'How the crew spreads',
          [
            field('spread.lane', 'Width of a lane', fact('m', '20 in')),
            field('spread.cutters', 'Only cut in the edges', number('0'), 'People.'),
            field('spread.broadcasters', 'Only broadcast', number('0'), 'People.'),
            field('spread.spikedShoes', 'Walks on fresh film in spiked shoes', { is: 'flag' }),
            field('spread.mixAt.area', 'Mixes in', { is: 'one of', from: areaNames }),
            field('spread.mixAt.at', 'at', { is: 'point' }),
          ],
          'What stays empty is assumed: batches are mixed outside, at the way out.',
        ),
        list('stopLines', 'Lines to stop at', {
          one: 'a line',
          title: (item) => textAt(item, ['area']),
          begin: (items) => ({ id: freshId('stop', items) }),
          parts: [
            field('area', 'Room', { is: 'one of', from: areaNames }),
            field('from', 'From', { is: 'point' }),
            field('to', 'To', { is: 'point' }),
          ],
        }),
        list('thinner', 'Thinner', {
          one: 'thinner',
          title: (item) => [textAt(item, ['layer']), textAt(item, ['ratio'])].join(', '),
          begin: () => ({}),
          parts: [
            field('layer', 'Coat', { is: 'one of', from: layerNames }),
            field('ratio', 'Share of the mix', quantity('1', '5 %')),
          ],
        }),
        field('changes', 'Changes priced beforehand', { is: 'lines' }, 'Their names in the price book, one a line.'),
      ],
    }),
    list('overrides', 'Laid on somebody’s word', {
      one: 'a word',
      title: (item) => [textAt(item, ['code']), textAt(item, ['by'])].join(', '),
      begin: () => ({}),
      parts: [
        field('code', 'What is overridden', TEXT, 'The name of the stop.'),
        field('by', 'By', TEXT),
        field('on', 'On', { is: 'date' }),
        field('why', 'Why', LONG),
      ],
    }),
  ],
};
