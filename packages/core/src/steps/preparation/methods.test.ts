import { describe, expect, test } from 'vitest';
import { catalogueOf, jobOf, prepare } from '../testing/small-job.ts';
import { fitOf, reachOf } from './methods.ts';
import { classesForFilm } from './target.ts';

const mil = 25.4e-6;

describe('target profile', () => {
  // Bands and classes by edition as read; across editions the stricter. Gaps belong to either neighbour, the stricter.
  test.each([
    ['2 mil: one edition only', 2, [1, 2]],
    ['3.5 mil: the gap of one, the others are silent', 3.5, [1, 2]],
    ['4 mil: three editions, two of them ask class 3', 4, [3, 3]],
    ['7 mil: the gap of the summary, between its 3 and its 4-5', 7, [4, 4]],
    ['20 mil', 20, [4, 4]],
    ['45 mil: 3-5 or 4-6 by one, 4-5 or 5-6 by the other', 45, [5, 5]],
    ['100 mil', 100, [5, 6]],
  ] as const)('%s', (_, thickness, classes) => {
    expect(classesForFilm(thickness * mil)?.classes).toEqual(classes);
  });

  test('the sheet of the system comes first, then the sheet of the first product, then the film', () => {
    const own = prepare(jobOf());
    expect([own.plan.target.least.value, own.plan.target.from]).toEqual([2, 'data sheet']);
    const product = prepare(
      jobOf(),
      catalogueOf((catalogue) => {
        delete catalogue.systems[0]?.profile;
        if (catalogue.products[0]) catalogue.products[0].profile = { least: 3, most: 4 };
      }),
    );
    expect([product.plan.target.least.value, product.plan.target.most.value]).toEqual([3, 4]);
    const film = prepare(
      jobOf(),
      catalogueOf((catalogue) => {
        delete catalogue.systems[0]?.profile;
      }),
    );
    // 2 × 0.25 mm at 100 % solids is 0.5 mm, 19.7 mil.
    expect(film.plan.target).toMatchObject({ from: 'film thickness' });
    expect(film.entries.get('one.preparation.target.film')).toMatchObject({ value: 0.0005 });
    expect(film.plan.notes.map(({ code }) => code)).toEqual([
      'preparation-target-from-film',
      'preparation-editions-differ',
    ]);
  });
});

describe('methods', () => {
  test('what all editions grant and what one claims (bars from memory)', () => {
    expect(reachOf('grind')).toEqual({ sure: [1, 2], claimed: [1, 3] });
    expect(reachOf('shot-blast')).toEqual({ sure: [3, 8], claimed: [2, 9] });
    expect(reachOf('no-such')).toBeUndefined();
  });

  test.each([
    ['grind', 2, 2, 'sure'],
    ['grind', 3, 5, 'editions differ'],
    ['grind', 4, 5, 'too smooth'],
    ['shot-blast', 3, 3, 'sure'],
    ['shot-blast', 2, 2, 'editions differ'],
    ['shot-blast', 1, 1, 'too rough'],
    ['scarify', 3, 3, 'too rough'],
    ['scarify', 4, 4, 'sure'],
  ] as const)('%s for %s to %s: %s', (id, least, most, fit) => {
    expect(fitOf(id, least, most)).toBe(fit);
  });

  const wanting = (least: number, most: number, method?: string, profiles: readonly number[] = []) =>
    prepare(
      jobOf((job) => {
        const [option] = job.options;
        if (!option || !job.survey.afterPreparation) throw new Error('incomplete');
        if (method) option.preparation = { method };
        else delete option.preparation;
        job.survey.afterPreparation.profiles = profiles.map((profile, i) => ({ where: `p${i}`, profile }));
      }),
      catalogueOf((catalogue) => {
        if (catalogue.systems[0]) catalogue.systems[0].profile = { least, most };
      }),
    );

  test('the first that fits and is in the shed is taken when none was chosen', () => {
    const { plan } = wanting(2, 2);
    expect(plan.chosen).toBe('grind');
    expect(plan.methods[0]).toMatchObject({ method: 'grind', fits: true, dust: 'middle', microCracking: 'low' });
    // Where the grinder cannot, the fastest other leads.
    expect(wanting(4, 5).plan.chosen).toBe('shot-blast');
  });

  test('those that fit stand before those that do not', () => {
    const fits = wanting(4, 5).plan.methods.map((method) => method.fits);
    expect(fits.indexOf(false)).toBe(fits.lastIndexOf(true) + 1);
  });

  test('a chosen method that cannot: stop, with the one that can', () => {
    const { plan, codes } = wanting(4, 5, 'grind');
    expect(codes).toContain('preparation-method-does-not-fit');
    expect(plan.verdict.word).toBe('stop');
    expect(plan.verdict.reasons[0]?.lift?.names?.method).toBe('@preparation-method-shot-blast');
  });

  test('where editions differ a caution, until a comparator on this floor shows it', () => {
    expect(wanting(3, 3, 'grind').codes).toContain('preparation-chosen-editions-differ');
    expect(wanting(3, 3, 'grind', [3, 3]).codes).not.toContain('preparation-chosen-editions-differ');
    expect(wanting(3, 3, 'grind', [3, 2]).codes).toContain('preparation-chosen-editions-differ');
  });

  test('what lies on the floor rules out washing and etching; wet work undoes the moisture tests', () => {
    const filmed = prepare(
      jobOf((job) => {
        job.survey.onFloor = [{ id: 'film', what: 'old coating', since: 2016 }];
      }),
    );
    const etch = filmed.plan.methods.find(({ method }) => method === 'acid-etch');
    expect(etch?.fits).toBe(false);
    expect(etch?.why.map(({ code }) => code)).toContain('preparation-method-leaves-film');
    const wet = wanting(2, 2, 'acid-etch', [2]);
    expect(wet.codes).toContain('preparation-wets-slab');
    expect(wet.plan.verdict.word).toBe('not known');
  });
});
