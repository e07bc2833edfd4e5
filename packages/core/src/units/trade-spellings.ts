/**
 * The spellings of the trade for each base unit and for compounds that it writes as one word.
 * Only what the trade writes on sheets, kits and gauges; a symbol that two units share is not listed.
 */
export const SPELLINGS: Readonly<Record<string, readonly string[]>> = {
  m: ['metre', 'metres', 'meter', 'meters'],
  km: ['kilometre', 'kilometres', 'kilometer', 'kilometers'],
  cm: ['centimetre', 'centimetres', 'centimeter', 'centimeters'],
  mm: ['millimetre', 'millimetres', 'millimeter', 'millimeters'],
  µm: ['um', 'micron', 'microns', 'micrometre', 'micrometres', 'micrometer', 'micrometers'],
  in: ['inch', 'inches', '"', '″', '”', "''", '′′', '’’'],
  ft: ['foot', 'feet', "'", '′', '’', 'lf'],
  yd: ['yard', 'yards', 'yds'],
  mi: ['mile', 'miles'],
  mil: ['mils', 'thou'],
  acre: ['acres'],
  L: ['l', 'ℓ', 'litre', 'litres', 'liter', 'liters'],
  mL: ['ml', 'millilitre', 'millilitres', 'milliliter', 'milliliters'],
  µL: ['ul'],
  gal: ['gallon', 'gallons', 'gals'],
  qt: ['quart', 'quarts', 'qts'],
  pt: ['pint', 'pints', 'pts'],
  kg: ['kgs', 'kilo', 'kilos', 'kilogram', 'kilograms'],
  g: ['gram', 'grams'],
  µg: ['ug'],
  t: ['tonne', 'tonnes'],
  lb: ['lbs', 'pound', 'pounds', 'lbm'],
  s: ['sec', 'secs', 'second', 'seconds'],
  min: ['mins', 'minute', 'minutes'],
  h: ['hr', 'hrs', 'hour', 'hours'],
  d: ['day', 'days'],
  week: ['weeks', 'wk', 'wks'],
  'F°': ['Δ°F', 'ΔF', '∆°F', '∆F'],
  K: ['kelvin', 'kelvins', 'ΔK', 'Δ°C', 'ΔC', '∆K', '∆°C', '∆C', 'C°'],
  '°F': ['degf', 'F', '℉', 'fahrenheit'],
  '°C': ['degc', 'C', '℃', 'celsius', 'centigrade'],
  '°': ['deg', 'degree', 'degrees'],
  '%': ['percent', 'pct'],
  psi: ['psig'],
  A: ['amp', 'amps', 'ampere', 'amperes'],
  V: ['volt', 'volts'],
  W: ['watt', 'watts'],
};

/** Compounds that the trade writes as one word, in small letters, and what they stand for. */
export const ONE_WORD: Readonly<Record<string, string>> = {
  sf: 'ft²',
  sqft: 'ft²',
  cuft: 'ft³',
  sqin: 'in²',
  cuin: 'in³',
  sqyd: 'yd²',
  cuyd: 'yd³',
  sqm: 'm²',
  cc: 'cm³',
  psf: 'lbf/ft²',
  pcf: 'lb/ft³',
  ach: '1/h',
  mph: 'mi/h',
  gpm: 'gal/min',
  lpm: 'L/min',
};

/** Words that name two units, with the spellings that name one. */
export const TWO_MEANINGS: Readonly<Record<string, readonly string[]>> = {
  oz: ['fl oz', 'oz(av)'],
  ozs: ['fl oz', 'oz(av)'],
  ounce: ['fl oz', 'oz(av)'],
  ounces: ['fl oz', 'oz(av)'],
  ton: ['ton(US)', 't'],
  tons: ['ton(US)', 't'],
};

const IMPERIAL = '(?:imp\\.?|imperial|uk)';
const US = '(?:us|u\\.s\\.)';
const GALLON = 'gal(?:lons?|s)?\\.?';
const MEASURE = '(ft|feet|foot|in|inch(?:es)?|yd|yards?|mm|cm|m|met(?:er|re)s?)(?![a-z])\\.?';

/** Names of several words, each made one word before the text is split. The order matters: the longer name first. */
export const PHRASES: readonly (readonly [RegExp, string])[] = [
  [/(\d),(?=\d{3}(?!\d))/g, '$1'],
  [
    new RegExp(`\\b${IMPERIAL}\\s*fl\\.?\\s*oz\\b\\.?|\\bfl\\.?\\s*oz\\.?\\s*\\(\\s*${IMPERIAL}\\s*\\)`, 'gi'),
    ' impfloz ',
  ],
  [new RegExp(`\\b${IMPERIAL}\\s*${GALLON}(?![a-z])|\\b${GALLON}\\s*\\(\\s*${IMPERIAL}\\s*\\)`, 'gi'), ' impgal '],
  [new RegExp(`\\b${US}\\s*${GALLON}(?![a-z])|\\b${GALLON}\\s*\\(\\s*${US}\\s*\\)`, 'gi'), ' gal '],
  [/\bfl(?:uid|\.)?\s*(?:oz|ounces?)(?![a-z])\.?|\boz\.?\s*\(\s*fl\.?\s*\)/gi, ' floz '],
  [/\boz\.?\s*\(\s*av(?:dp)?\.?\s*\)|\boz\.?\s*(?:av(?:dp)?|wt)(?![a-z])\.?/gi, ' avoz '],
  [/\btons?\s*\(\s*us\s*\)|\b(?:us|short)\s*tons?\b/gi, ' uston '],
  [/\bin\.?\s*(?:of\s*)?(?:h[₂2]o|w\.?\s*[gc]\.?)(?![a-z])/gi, ' inwater '],
  [/\bin\.?\s*(?:of\s*)?hg(?![a-z])/gi, ' inhg '],
  [/\bmm\s*(?:of\s*)?hg(?![a-z])/gi, ' mmhg '],
  [/%\s*r\.?h\.?(?![a-z])|\br\.?h\.?\s*%/gi, ' rh '],
  [/\bdeg(?:rees?)?\.?\s*(fahrenheit|f|celsius|c)(?![a-z])/gi, ' $1 '],
  [/[°º]\s*(?=[cf](?![a-z]))/gi, '°'],
  [new RegExp(`\\bsq(?:uare|\\.)?\\s*${MEASURE}`, 'gi'), '$1² '],
  [new RegExp(`\\bcu(?:bic|\\.)?\\s*${MEASURE}`, 'gi'), '$1³ '],
  [/\blin(?:eal|ear|\.)?\s*(?:ft|feet|foot)(?![a-z])\.?/gi, ' ft '],
  [/\bper\b/gi, '/'],
];

/** Prefixed symbols whose small letters would mean something a million times or more away. */
export const NEVER_FOLDED: ReadonlySet<string> = new Set(['Mg', 'Mm']);
