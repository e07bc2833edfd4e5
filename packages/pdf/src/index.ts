export type { FontFiles } from './fonts.ts';
export type { PaperSize } from './look.ts';
export { type RenderOptions, renderPaper } from './render.ts';
