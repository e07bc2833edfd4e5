export { needs } from './needs.ts';
