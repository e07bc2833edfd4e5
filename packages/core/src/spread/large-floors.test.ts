import { describe, expect, it } from 'vitest';
import { planSpread, readInstance, solutionOf, spreadProblem } from './index.ts';
import { jointGridHall } from './large-floors.ts';

describe('very large floors', () => {
  const one = planSpread(jointGridHall(1, 1), { areas: 'whole', seed: 1 });
  const ten = planSpread(jointGridHall(10, 1), { areas: 'whole', seed: 1 });

  it('20,000 m² side by side have no older wet edge than the 2,000 m²', () => {
    if (one.kind !== 'plan' || ten.kind !== 'plan') throw new Error('no plan');
    expect(ten.problem.squares.count).toBe(10 * one.problem.squares.count);
    // compared in 1/64 s: sums over a day differ in the last bits
    const ticks = (minutes: number) => Math.round(minutes * 3840);
    expect(ticks(ten.check.maxAgeMin)).toBeLessThanOrEqual(ticks(one.check.maxAgeMin));
    expect(ten.check.pours).toBe(ten.problem.leastBatches);
  });

  it('tell how far they are, bay by bay, and stop when told to', () => {
    const told: number[] = [];
    const stopped = planSpread(jointGridHall(10, 1), {
      areas: 'whole',
      seed: 1,
      onProgress: (done, of) => {
        told.push(done / of);
        return told.length < 6;
      },
    });
    expect(stopped.kind).toBe('plan');
    if (stopped.kind !== 'plan') return;
    expect(stopped.stopped).toBe(true);
    expect(told).toHaveLength(6);
    // a report for every few candidates: what is grown between two is a small part of the whole
    expect(Math.max(...told)).toBeLessThan(0.15);
    expect(told).toEqual([...told].sort((a, b) => a - b));
  });

  it('are written and read in the same format', () => {
    if (one.kind !== 'plan') throw new Error('no plan');
    const read = readInstance({ format: 'spread-instance-1', ...jointGridHall(1, 1) });
    expect(read).toEqual({ ok: true, value: { format: 'spread-instance-1', ...jointGridHall(1, 1) } });
    expect(solutionOf(spreadProblem(jointGridHall(1, 1), 'whole'), one.best)).toEqual(one.solution);
  });
});
