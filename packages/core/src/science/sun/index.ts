export * from './clear-sky.ts';
export * from './diffuse-share.ts';
export * from './door-sun.ts';
export * from './position.ts';
