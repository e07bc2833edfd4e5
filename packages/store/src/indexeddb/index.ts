export { eraseIndexedDbStore, type IndexedDbOptions, openIndexedDbStore } from './open.ts';
export { askToPersist, type DeviceStorage } from './persistence.ts';
