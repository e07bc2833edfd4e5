import { describe, expect, test } from 'vitest';
import catalogue from '../../../jobs/garage/catalogue.json' with { type: 'json' };
import job from '../../../jobs/garage/job.json' with { type: 'json' };
import priceBook from '../../../jobs/garage/price-book.json' with { type: 'json' };
import weather from '../../../jobs/garage/weather.json' with { type: 'json' };
import { jobFrom } from './job.ts';
import { shareFrom, shareFromText } from './share.ts';

const whole = { schema: 'slabwright.share/1', job, catalogue, weather, priceBook };
const codes = (value: unknown) => {
  const read = shareFrom(value);
  return read.ok ? [] : read.issues.map(({ code, path }) => `${code} ${path.join('.')}`);
};

describe('a job shared as one file', () => {
  test('brings each part as its own reader reads it', () => {
    const read = shareFrom(whole);
    expect(read.ok && Object.keys(read.value).sort()).toEqual(['catalogue', 'job', 'priceBook', 'weather']);
    const alone = jobFrom(job);
    expect(read.ok && read.value.job).toEqual(alone.ok && alone.value);
  });

  test('is whole without money and without weather', () => {
    const { priceBook: _, weather: __, ...crew } = whole;
    const read = shareFrom(crew);
    expect(read.ok && Object.keys(read.value).sort()).toEqual(['catalogue', 'job']);
  });

  test('names the part in which a field is wrong', () => {
    expect(codes({ ...whole, job: { ...job, areas: [] } })).toEqual(['too-few job.areas']);
    expect(codes({ ...whole, weather: { ...weather, rows: 'none' } })).toEqual(['field-wrong-type weather.rows']);
  });

  test.each([
    ['no catalogue', { ...whole, catalogue: undefined }, 'file-not-an-object catalogue'],
    ['something more in it', { ...whole, run: 'me' }, 'field-unknown run'],
    ['a part of another kind', { ...whole, catalogue: job }, 'schema-other-kind catalogue.schema'],
    ['a file of the future', { ...whole, schema: 'slabwright.share/2' }, 'schema-from-the-future schema'],
    ['a list', [whole], 'file-not-an-object '],
    ['no moment', { ...whole, asOf: 'yesterday' }, 'instant'],
  ])('refuses %s', (_what, value, wanted) => {
    expect(codes(value).join('; ')).toContain(wanted);
  });

  test('text that is cut off or too deep is refused before it is parsed', () => {
    const text = JSON.stringify(whole);
    const cut = shareFromText(text.slice(0, -40));
    expect(!cut.ok && cut.issues[0]?.code).toBe('file-cut-off');
    const deep = shareFromText(`${'['.repeat(5000)}${']'.repeat(5000)}`);
    expect(!deep.ok && deep.issues[0]?.code).toBe('file-too-deep');
  });
});
