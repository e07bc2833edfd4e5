export { ALL_FORMULAS } from './all-formulas.ts';
export { type CalendarEvent, calendarOf, type PlanCalendar } from './calendar.ts';
export {
  type Catalogue,
  type CatalogueFile,
  catalogue as catalogueSchema,
  catalogueFrom,
  catalogueFromText,
  type Product,
  type System as CoatingSystem,
} from './catalogue.ts';
export { broughtUp } from './catalogue-before.ts';
export { SOURCES, type Source, type SourceMark, sourceOf } from './data/sources.ts';
export type { Area, AreaDoor } from './drawing.ts';
export { type Job, type JobFile, type JobOption, job as jobSchema, jobFrom, jobFromText } from './job.ts';
export { jsonSchemas } from './json-schemas.ts';
export * from './kernel/index.ts';
export { type Log, log as logSchema, logFrom, logFromText } from './log.ts';
export { type EvidenceCell, evidenceCells, evidenceName } from './paper-content/evidence-row.ts';
export * from './paper-content/index.ts';
export {
  type Answer,
  answered,
  ENGINE,
  type EntryId,
  type OptionPlan,
  PLAN_SCHEMA,
  type Plan,
  type PlanInput,
  type Published,
  plan,
  type Unanswered,
} from './plan.ts';
export {
  type PriceBook,
  type PriceBookFile,
  priceBook as priceBookSchema,
  priceBookFrom,
  priceBookFromText,
} from './price-book.ts';
export { rankSystems, type SystemRanked, type SystemsRanked } from './rank-systems.ts';
export { depthOf, issuesOf, MOST_BYTES, MOST_DEPTH, readJson } from './read.ts';
export * as climate from './science/climate.ts';
export { wetFilmFromDry } from './science/film/wet-from-dry.ts';
export {
  type DoorPlaced,
  type DoorShape,
  type DoorSide,
  type LaidOut,
  layOut,
  placedPoint,
  pointInRoom,
  type RoomFromTape,
  type RoomPlaced,
  type RoomShape,
  roomFromTape,
  squareCorner,
  type TapeTrouble,
} from './science/shape/index.ts';
export { SHARE_SCHEMA, type Share, type ShareFile, share as shareSchema, shareFrom, shareFromText } from './share.ts';
export * as spread from './spread/index.ts';
export { checkCatalogue } from './steps/check/catalogue.ts';
export { checkJob, WARNINGS } from './steps/check/job.ts';
export { type SiteState, siteStateOf } from './steps/day/site-state.ts';
export {
  type Claim,
  compareProducts,
  type EvidencePair,
  type EvidenceRow,
  type EvidenceTable,
} from './steps/evidence/index.ts';
export type * from './steps/results.ts';
export type { SpreadProgress, SpreadSeen } from './steps/spread/index.ts';
export * from './units/index.ts';
export {
  WEATHER_KINDS,
  type WeatherDocument,
  type WeatherFile,
  weather as weatherSchema,
  weatherFrom,
  weatherFromText,
} from './weather.ts';
export { type SeriesToFile, weatherDocumentOf, weatherFileOf } from './weather-of-series.ts';
export {
  TYPED_NUMBERS,
  type TypedNumber,
  type TypedNumbers,
  typedDocument,
  weatherFromTyped,
} from './weather-typed.ts';
export { citedInFull, citedShort } from './words/cited.ts';
export * from './words/index.ts';
export { type Working, type WorkingInput, workingOf } from './words/working.ts';
