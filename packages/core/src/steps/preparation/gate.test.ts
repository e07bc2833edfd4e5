import { describe, expect, test } from 'vitest';
import { catalogueOf, jobOf, prepare } from '../testing/small-job.ts';
import { rowsForUse } from './strength-needed.ts';

describe('the gate after preparation', () => {
  type Draft = Parameters<NonNullable<Parameters<typeof jobOf>[0]>>[0];
  const gate = (change: (job: Draft) => void, catalogue = catalogueOf()) => prepare(jobOf(change), catalogue);
  const after = (job: Draft) => {
    const found = job.survey.afterPreparation;
    if (!found) throw new Error('nothing after preparation');
    return found;
  };

  test('all four shown: go', () => {
    const { plan } = gate(() => {});
    expect(plan.gate).toEqual({ word: 'go', reasons: [] });
    expect(plan.verdict.word).toBe('go');
  });

  test('nothing shown: four times not known, never go', () => {
    const { plan, codes } = gate((job) => {
      delete job.survey.afterPreparation;
      delete job.survey.pullOffs;
    });
    expect(plan.gate.word).toBe('not known');
    expect(codes).toEqual([
      'preparation-drops-not-tried',
      'preparation-tape-not-tried',
      'preparation-profile-not-read',
      'preparation-pull-off-none',
    ]);
  });

  // 3 drops for the first 2,000 ft², one more for each further 3,000 ft²: trade page, READ.
  test.each([
    [3, '37.16 m', []],
    [3, '37.17 m', ['preparation-drops-too-few']],
    [4, '37.17 m', []],
    [2, '10 m', ['preparation-drops-too-few']],
  ])('%s drops on 5 m × %s', (count, side, expected) => {
    const { codes } = gate((job) => {
      after(job).waterDrops = Array.from({ length: count }, (_, i) => ({ where: `${i}`, result: 'soaks in' as const }));
      if (job.areas[0]) {
        job.areas[0].outline = [
          ['0 m', '0 m'],
          [side, '0 m'],
          [side, '5 m'],
          ['0 m', '5 m'],
        ];
      }
    });
    expect(codes.filter((code) => code.startsWith('preparation-drop'))).toEqual(expected);
  });

  test('one drop that stays is a stop at its place', () => {
    const { plan } = gate((job) => {
      after(job).waterDrops?.push({ where: 'by the door', result: 'stays' });
    });
    expect(plan.gate.word).toBe('stop');
    expect(plan.gate.reasons[0]).toMatchObject({ code: 'preparation-drop-stays', names: { where: 'by the door' } });
  });

  test('dusty tape is a stop', () => {
    expect(
      gate((job) => {
        after(job).dustTape = 'dusty';
      }).codes,
    ).toEqual(['preparation-tape-dusty']);
  });

  test.each([
    [1, 'stop', ['preparation-profile-too-smooth']],
    [2, 'go', []],
    [3, 'caution', ['preparation-profile-too-rough']],
  ])('profile %s where 2 is wanted: %s', (profile, word, codes) => {
    const { plan } = gate((job) => {
      after(job).profiles = [{ where: 'a', profile }];
    });
    expect(plan.gate.word).toBe(word);
    expect(plan.gate.reasons.map(({ code }) => code)).toEqual(codes);
  });

  const pulls = (job: Draft, ...stresses: readonly string[]): void => {
    job.survey.pullOffs = stresses.map((stress, i) => ({
      id: `d${i}`,
      after: 'preparation' as const,
      stress,
      mode: 'A' as const,
    }));
  };

  // 1.5 MPa in the mean where no sheet asks, single from two thirds of it: resin floor guides, from memory.
  test.each([
    ['mean at the need', ['1.5 MPa', '1.5 MPa', '1.5 MPa'], []],
    ['mean below', ['1.5 MPa', '1.5 MPa', '1.4 MPa'], ['preparation-pull-off-mean-low']],
    ['one below the mean wanted', ['2 MPa', '2 MPa', '1.4 MPa'], ['preparation-pull-off-single-below-mean']],
    ['one below two thirds', ['2.5 MPa', '2.5 MPa', '0.9 MPa'], ['preparation-pull-off-single-low']],
    ['two only', ['2 MPa', '2 MPa'], ['preparation-pull-off-too-few']],
  ] as const)('pull-offs: %s', (_, stresses, expected) => {
    expect(gate((job) => pulls(job, ...stresses)).codes).toEqual(expected);
  });

  test('the sheet goes before the table, and may state the single pull itself', () => {
    const sheet = (bondLeast?: string) =>
      catalogueOf((catalogue) => {
        const [product] = catalogue.products;
        if (!product) throw new Error('no product');
        product.bondNeed = '2.0 MPa';
        if (bondLeast) product.bondLeast = bondLeast;
      });
    expect(gate((job) => pulls(job, '1.9 MPa', '1.9 MPa', '1.9 MPa'), sheet()).codes).toEqual([
      'preparation-pull-off-mean-low',
    ]);
    const mixed = (job: Draft): void => pulls(job, '2.6 MPa', '2.6 MPa', '1.7 MPa');
    expect(gate(mixed, sheet()).codes).toEqual(['preparation-pull-off-single-below-mean']);
    expect(gate(mixed, sheet('1.7 MPa')).codes).toEqual([]);
    expect(gate(mixed, sheet('1.8 MPa')).codes).toEqual(['preparation-pull-off-single-low']);
  });

  test.each([
    ['foot', ['sp13-light', 'resin-floors-europe']],
    ['vehicle', ['sp13-light', 'resin-floors-europe']],
    ['forklift', ['sp13-severe', 'resin-floors-europe']],
    [undefined, ['sp13-severe', 'resin-floors-europe']],
  ])('acceptance rows for %s', (traffic, rows) => {
    expect(rowsForUse(traffic)).toEqual(rows);
  });
});
