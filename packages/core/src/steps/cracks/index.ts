export { BRIDGING_SOURCE, dynamicClassFor, staticClassFor } from './classes.ts';
export { cracks } from './cracks.ts';
export { treated } from './treated.ts';
