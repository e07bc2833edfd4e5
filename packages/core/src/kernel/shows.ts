/**
 * What sort of thing a number is to a reader, so that a film is shown in mils or µm and a room in feet or metres
 * although both are metres inside. Formulas and fields name it once; the units module turns it into text.
 */
export const SHOWS = [
  'plain',
  'count',
  'share',
  'humidity',
  'length',
  'small-length',
  'film',
  'area',
  'volume',
  'gas-volume',
  'spread-rate',
  'density',
  'voc',
  'mass',
  'area-mass',
  'stress',
  'force',
  'pressure',
  'temperature',
  'difference',
  'emission',
  'airflow',
  'area-rate',
  'length-rate',
  'duration',
  'work-time',
  'money',
  'concentration',
  'expansion',
  'power',
  'current',
  'energy-per-mole',
  'wear',
  'impact',
] as const;

export type Shows = (typeof SHOWS)[number];
