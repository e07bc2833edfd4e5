export { type MemoryDisk, type MemoryOptions, memoryDisk, openMemoryStore } from './engine.ts';
