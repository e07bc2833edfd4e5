export { LANGUAGES, type Language, MESSAGES } from './messages.ts';
export { type Voice, voice } from './say.ts';
export { type Reader, show, showBand, showValue } from './show.ts';
