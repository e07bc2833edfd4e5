import { describe, expect, test } from 'vitest';
import { freshId, insertAt, removeAt, setAt, startsWith, textAt, valueAt } from './path.ts';

describe('a file by path', () => {
  test('what is set is read back, with lists where numbers stand', () => {
    const draft = { survey: {} };
    setAt(draft, ['survey', 'moisture', 'tests', 0, 'humidity'], '78 %');
    expect(draft).toEqual({ survey: { moisture: { tests: [{ humidity: '78 %' }] } } });
    expect(textAt(draft, ['survey', 'moisture', 'tests', 0, 'humidity'])).toBe('78 %');
    expect(valueAt(draft, ['survey', 'nothing', 3])).toBeUndefined();
  });

  test('the last field taken out takes its empty object along, not the survey itself', () => {
    const draft = { survey: { building: { power: { phases: 1 } } } };
    removeAt(draft, ['survey', 'building', 'power', 'phases']);
    expect(draft).toEqual({ survey: {} });
  });

  test('an item of a list stays when its last field goes; the item itself can be taken out', () => {
    const draft = { climate: [{ air: '20 °C' }, { air: '21 °C' }] };
    removeAt(draft, ['climate', 0, 'air']);
    expect(draft.climate).toHaveLength(2);
    removeAt(draft, ['climate', 0]);
    expect(draft.climate).toEqual([{ air: '21 °C' }]);
  });

  test('an item goes where it is put', () => {
    const draft = { list: ['a', 'c'] };
    insertAt(draft, ['list'], 'b', 1);
    insertAt(draft, ['other'], 'x');
    expect(draft).toEqual({ list: ['a', 'b', 'c'], other: ['x'] });
  });

  test('a fresh name is one nobody has', () => {
    expect(freshId('crack', [{ id: 'crack-1' }, { id: 'crack-3' }])).toBe('crack-2');
  });

  test('a path lies under another', () => {
    expect(startsWith(['a', 0, 'b'], ['a', 0])).toBe(true);
    expect(startsWith(['a', 1, 'b'], ['a', 0])).toBe(false);
  });
});
