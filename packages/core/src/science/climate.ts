/** Sun, weather, slab heat, cure and the windows for work: one name for each field, so that short names do not collide. */
export * as cure from './cure/index.ts';
export * as heat from './heat/index.ts';
export * as sun from './sun/index.ts';
export * as weatherScience from './weather/index.ts';
export * as windows from './windows/index.ts';
