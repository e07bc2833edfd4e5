export { system } from './system.ts';
