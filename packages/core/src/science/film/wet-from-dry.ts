import { formula } from '../../kernel/formula.ts';

/**
 * Wet film that leaves a given dry film, m.
 *
 * Solids stay and the rest evaporates. A 100 % solids coating has `volumeSolids` 1. Thinner added on site is part of
 * the volatile: take the solids after thinning. Chosen over the mass form because sheets state solids by volume.
 */
export const wetFilmFromDry = formula({
  id: 'film/wet-from-dry',
  says: 'Wet film that leaves a given dry film',
  equation: 'wetFilm = dryFilm / volumeSolids',
  takes: { dryFilm: 'm', volumeSolids: '1' },
  gives: 'm',
  holds: { dryFilm: [0, 0.01], volumeSolids: [0.05, 1] },
  refuses: { dryFilm: [0, 1], volumeSolids: [1e-9, 1] },
  source: 'conservation-of-solids',
  shows: 'film',
  inputShows: { dryFilm: 'film', volumeSolids: 'share' },
  compute: ({ dryFilm, volumeSolids }) => dryFilm / volumeSolids,
});
