import { formula } from '../../kernel/formula.ts';

/**
 * Dry film that a given wet film leaves, m; volume solids a fraction.
 *
 * Nothing but solvent and water leaves the film, so its solids stay. For a thinned coating take the solids after
 * thinning: a gauge target that was not raised leaves a film too thin by thinner / (1 + thinner).
 */
export const dryFilmFromWet = formula({
  id: 'film/dry-from-wet',
  says: 'Dry film that a given wet film leaves',
  equation: 'wetFilm × volumeSolids',
  takes: { wetFilm: 'm', volumeSolids: '1' },
  gives: 'm',
  holds: { wetFilm: [0, 0.02], volumeSolids: [0.05, 1] },
  refuses: { wetFilm: [0, 1], volumeSolids: [1e-9, 1] },
  source: 'conservation-of-solids',
  notes:
    'Volume solids, never weight solids: they differ by the density of the solvent. A wet gauge controls the work; it is no measure of the dry film for acceptance.',
  shows: 'film',
  inputShows: { wetFilm: 'film', volumeSolids: 'share' },
  compute: ({ wetFilm, volumeSolids }) => wetFilm * volumeSolids,
});
