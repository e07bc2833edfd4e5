import { formula } from '../../kernel/formula.ts';

/**
 * Airflow that a hand grinder's shroud needs, m³/s: wheel diameter in m, airflow per diameter in m²/s.
 *
 * Without a figure the rule's 25 cfm per inch of wheel (0.4645 m²/s) is assumed; the tool's own instruction goes before.
 */
export const shroudAirflow = formula({
  id: 'dust/shroud-airflow',
  says: 'Airflow that the shroud of a hand grinder needs',
  equation: 'wheelDiameter × airflowPerDiameter',
  takes: { wheelDiameter: 'm', airflowPerDiameter: 'm²/s' },
  gives: 'm³/s',
  holds: { wheelDiameter: [0.05, 0.4], airflowPerDiameter: [0.1, 2] },
  refuses: { wheelDiameter: [0.001, 5], airflowPerDiameter: [0, 100] },
  defaults: { airflowPerDiameter: 0.464515 },
  source: 'osha-silica-table-1',
  locator: '29 CFR 1926.1153 table 1, row (xi)',
  notes:
    'For hand grinders only: a walk-behind grinder takes the airflow its maker recommends. The rating of a vacuum falls as its filter loads, so the airflow at the shroud is what counts.',
  shows: 'airflow',
  inputShows: { wheelDiameter: 'small-length' },
  compute: ({ wheelDiameter, airflowPerDiameter }) => wheelDiameter * airflowPerDiameter,
});

/** Mass of the dust that grinding takes off, kg; area in m², depth removed in m, density in kg/m³. */
export const dustMass = formula({
  id: 'dust/mass',
  says: 'Mass of dust that a removed depth becomes',
  equation: 'area × removedDepth × density',
  takes: { area: 'm²', removedDepth: 'm', density: 'kg/m³' },
  gives: 'kg',
  holds: { area: [0, 1e5], removedDepth: [0, 0.03], density: [1000, 3000] },
  refuses: { area: [0, 1e8], removedDepth: [0, 1], density: [1, 25000] },
  source: 'volume-removed-geometry',
  notes:
    'The solid mass; loose dust takes about twice the room. A trade page puts 1/8 in off 50 000 ft² at 20 ft³ and 3 000 lb: wrong by a factor of 26.',
  shows: 'mass',
  inputShows: { area: 'area', removedDepth: 'film', density: 'density' },
  compute: ({ area, removedDepth, density }) => area * removedDepth * density,
});
