import { describe, expect, test } from 'vitest';
import { begin, changed, redone, undone } from './history.ts';

describe('undo and redo', () => {
  test('a step back and forth ends where it began', () => {
    const two = changed(changed(begin('a'), 'b'), 'c');
    expect(undone(two).present).toBe('b');
    expect(undone(undone(two)).present).toBe('a');
    expect(redone(undone(two))).toEqual(two);
  });

  test('nothing to undo or redo changes nothing', () => {
    const start = begin('a');
    expect(undone(start)).toBe(start);
    expect(redone(start)).toBe(start);
  });

  test('a change after undo drops what was undone', () => {
    const other = changed(undone(changed(begin('a'), 'b')), 'x');
    expect(other.future).toEqual([]);
    expect(undone(other).present).toBe('a');
  });

  test('typing on in one field is one step; another field is the next', () => {
    let history = begin('');
    for (const text of ['1', '12', '12 ft']) history = changed(history, text, 'width');
    history = changed(history, '12 ft!', 'depth');
    expect(history.past).toEqual(['', '12 ft']);
    expect(undone(undone(history)).present).toBe('');
  });

  test('the same value again is no step', () => {
    const history = changed(begin('a'), 'b');
    expect(changed(history, 'b')).toBe(history);
  });

  test('goes back without end', () => {
    let history = begin(0);
    for (let i = 1; i <= 1000; i++) history = changed(history, i);
    expect(history.past).toHaveLength(1000);
    expect(history.past[0]).toBe(0);
  });
});
