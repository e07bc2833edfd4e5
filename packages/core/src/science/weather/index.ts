export * from './build.ts';
export * from './limits.ts';
export * from './moist.ts';
export * from './series.ts';
