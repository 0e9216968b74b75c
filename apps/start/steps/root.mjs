import path from 'node:path';

/** Top folder of the repository. */
export const root = path.resolve(import.meta.dirname, '../../..');
