export { governs } from './governs.ts';
