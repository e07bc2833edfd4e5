export { convert, toSI } from './convert.ts';
export type { MeasuredUnit, System } from './listed.ts';
export type { DecimalMark } from './number.ts';
export { type Parsed, type ParsedAny, type ParseOptions, parseAny, parseQuantity, type Quantity } from './parse.ts';
export { suggestUnits } from './suggest.ts';
export { dimensionWords, type TradeUnit, UNIT_NAMES_BY_DIMENSION, unitNamed, unitsOf } from './trade-unit.ts';
export { type TextTrouble, UNIT_TROUBLES, type UnitTrouble, type UnitTroubleCode } from './trouble.ts';
