// Writes tests/logs/files anew from corpus.ts; run it after a change there:
// node --conditions=pullbook-source --import tsx tests/logs/make-files.ts
import fs from 'node:fs';
import { CORPUS } from './corpus.js';

const folder = new URL('files/', import.meta.url);
fs.rmSync(folder, { recursive: true, force: true });
fs.mkdirSync(folder, { recursive: true });
for (const { name, bytes } of CORPUS) fs.writeFileSync(new URL(name, folder), bytes);
