export { quantities } from './quantities.ts';
