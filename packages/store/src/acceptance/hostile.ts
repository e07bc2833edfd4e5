import { backupText, readBackup } from '../backup.ts';
import { InvalidInput } from '../errors.ts';
import type { Json } from '../port.ts';
import { rejection, same } from './expect.ts';
import type { AcceptanceCase } from './place.ts';
import { instant, job, reading } from './samples.ts';

const strangeTexts: readonly string[] = [
  "Robert'); drop table headings;--",
  '" or 1=1 --',
  '%_\\%',
  '<script>alert(1)</script>',
  'before\u0000after',
  'line\nfeed\ttab \u001b[31m',
  '👷🏽‍♀️ 🧪 épôxy ﷽ مرحبا',
  'e\u0301 \u202e right to left',
  '\uffff \ufeff \u{10ffff}',
  '',
  ' ',
];

export const hostileCases: readonly AcceptanceCase[] = [
  {
    rule: 'X1',
    title: 'strange texts come back letter for letter and harm nothing',
    async run({ open }) {
      const store = await open();
      for (const [index, text] of strangeTexts.entries()) {
        const draft = job(`j${index}`, { title: text, searchText: text, body: { [text]: text, list: [text] } });
        await store.put(draft, 0);
        await store.append({ jobId: `j${index}`, id: 'r1', at: instant(0), body: { note: text } });
      }
      for (const [index, text] of strangeTexts.entries()) {
        const stored = await store.get('job', `j${index}`);
        same(
          [stored?.title, stored?.searchText, stored?.body],
          [text, text, { [text]: text, list: [text] }],
          'the document',
        );
        same((await store.entries(`j${index}`))[0]?.body, { note: text }, 'the entry');
      }
      same((await store.list({ kind: 'job' })).total, strangeTexts.length, 'the number of documents');
      const text = backupText(await store.exportAll());
      same(backupText(readBackup(text)) === text, true, 'the backup reads back as the same bytes');
    },
  },
  {
    rule: 'X2',
    title: 'a text searched for is only a text: signs of a query language are letters like others',
    async run({ open }) {
      const store = await open();
      await store.put(job('a', { title: '100% solids', searchText: "O'Hara_2" }), 0);
      await store.put(job('b', { title: 'before\u0000after' }), 0);
      const find = async (text: string) => (await store.list({ kind: 'job', text })).headings.map(({ id }) => id);
      same(await find('100%'), ['a'], 'a percent sign');
      same(await find('%'), ['a'], 'a percent sign alone');
      same(await find('s_lids'), [], 'an underscore');
      same(await find("o'hara"), ['a'], 'a quote');
      same(await find("' or 1=1 --"), [], 'a query');
      same(await find('after'), ['b'], 'what comes after a zero character');
      same(await find('NEAR("a") AND OR * ^ ('), [], 'search operators');
    },
  },
  {
    rule: 'X3',
    title: 'ids are compared letter by letter, also those that look like keys, numbers or queries',
    async run({ open }) {
      const store = await open();
      const ids = ['__proto__', 'constructor', "';--", '0', '00', '1e3', 'A', 'a', '[1]', 'null', '~'];
      for (const id of ids) await store.put(job(id), 0);
      for (const id of ids) same((await store.get('job', id))?.title, `Garage ${id}`, id);
      same(
        (await store.list({ kind: 'job' })).headings.map(({ id }) => id),
        [...ids].sort().reverse(),
        'the order',
      );
      same(await store.get('job', 'toString'), null, 'an id that was not put');
      same(await store.entries('__proto__'), [], 'a log that was not begun');
    },
  },
  {
    rule: 'X4',
    title: 'a body of a megabyte is kept and comes back whole',
    async run({ open }) {
      const store = await open();
      const body = { photo: 'ÿ😀'.repeat(250_000), readings: Array.from({ length: 20_000 }, (_, index) => index / 7) };
      const stored = await store.put(job('big', { body }), 0);
      same(JSON.stringify(stored.body).length > 1_000_000, true, 'it is that big');
      same((await store.get('job', 'big'))?.body, body, 'the body');
    },
  },
  {
    rule: 'X5',
    title: 'what JSON would drop or change is refused with its place in the body',
    async run({ open }) {
      const store = await open();
      const circle: unknown[] = [];
      circle.push(circle);
      const bodies: readonly [string, unknown][] = [
        ['body.area', { area: Number.NaN }],
        ['body.area', { area: Number.POSITIVE_INFINITY }],
        ['body.rooms[1]', { rooms: ['garage', undefined] }],
        ['body.when', { when: new Date(0) }],
        ['body.f', { f: () => 1 }],
        ['body', undefined],
        ['body.big', { big: 10n }],
        ['body.map', { map: new Map() }],
      ];
      for (const [place, body] of bodies) {
        const refused = await rejection(store.put(job('a', { body: body as Json }), 0), InvalidInput, place);
        same(refused.field, place, 'the place named');
      }
      await rejection(store.put(job('a', { body: circle as Json }), 0), InvalidInput, 'a body that contains itself');
      await rejection(store.append({ ...reading('a', 'r', 0), body: Number.NaN }), InvalidInput, 'an entry');
      same((await store.list({ kind: 'job' })).total, 0, 'the number of documents');
    },
  },
];
