import { readFileSync } from 'node:fs';
import path from 'node:path';

/** Version of this release, from the package. */
export const version: string = (
  JSON.parse(readFileSync(path.resolve(import.meta.dirname, '../../package.json'), 'utf8')) as {
    version: string;
  }
).version;
