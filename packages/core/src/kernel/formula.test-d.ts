import { wetFilmFromDry } from '../science/film/wet-from-dry.ts';
import type { Known } from './entry.ts';
import { type Ledger, Trace } from './trace.ts';

declare const ledger: Ledger;
declare const length: Known<'m'>;
declare const share: Known<'1'>;
const trace = new Trace(ledger);

export const fine = trace.figure('wet', wetFilmFromDry, { dryFilm: length, volumeSolids: share });

// @ts-expect-error TS2345: an input is missing
trace.figure('wet', wetFilmFromDry, { dryFilm: length });
// @ts-expect-error TS2353: an input is misnamed
trace.figure('wet', wetFilmFromDry, { dryFilm: length, volumeSolid: share });
// @ts-expect-error TS2322: an input has another dimension
trace.figure('wet', wetFilmFromDry, { dryFilm: share, volumeSolids: share });
