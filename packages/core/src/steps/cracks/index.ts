export { BRIDGING_SOURCE, dynamicClassFor, staticClassFor } from './classes.ts';
export { cracks } from './cracks.ts';
