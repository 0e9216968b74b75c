// npm run bench:log-memory: how much memory the analysis of large logs takes. Writes docs/bench/log-memory.md.
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { takeWay, writeBigLog } from './logs/time-whole-log.js';

/** Megabytes of the file, and the megabytes of memory that we want to stay under. */
const SIZES = [
  { fileMegabytes: 100, heldToMegabytes: 300 },
  { fileMegabytes: 1000, heldToMegabytes: 400 },
];

const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'pullbook-memory-'));
const rows = SIZES.map(({ fileMegabytes, heldToMegabytes }) => {
  const file = path.join(folder, 'big.csv');
  const rowCount = writeBigLog(file, fileMegabytes * 1e6);
  const { seconds, peakMegabytes } = takeWay('analysis', file);
  fs.rmSync(file);
  const verdict = peakMegabytes <= heldToMegabytes ? 'kept' : 'missed';
  return `| ${fileMegabytes} MB | ${rowCount} | ${seconds.toFixed(1)} | ${peakMegabytes.toFixed(0)} MB | ${heldToMegabytes} MB | ${verdict} |`;
});
fs.rmSync(folder, { recursive: true });
const text = [
  '# Memory of the log analysis',
  '',
  `Made by \`npm run bench:log-memory\` on Node ${process.versions.node}: CSV of 20 channels, read from disk in pieces of 1 MB, analysed whole in a process of its own; peak resident memory as the system counts it. Seconds are those of one run with other work on the machine.`,
  '',
  '| file | rows | seconds | peak memory | held to | |',
  '| --- | --- | --- | --- | --- | --- |',
  ...rows,
  '',
].join('\n');
console.log(text);
fs.writeFileSync(new URL('../../docs/bench/log-memory.md', import.meta.url), text);
