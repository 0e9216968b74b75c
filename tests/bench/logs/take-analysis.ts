// The whole analysis over one file, in pieces: read, recognise, find, measure, judge.
import fs from 'node:fs';
import { analyseSamples, createLogReader } from '@pullbook/tuning-math';

const handle = fs.openSync(process.argv[2] ?? '', 'r');
const bytes = Buffer.alloc(1 << 20);
const started = performance.now();
const reader = createLogReader({ byteCount: fs.fstatSync(handle).size });
for (let count = fs.readSync(handle, bytes); count > 0; count = fs.readSync(handle, bytes)) {
  reader.push(bytes.subarray(0, count));
}
const analysis = analyseSamples(reader.finish());
const seconds = (performance.now() - started) / 1000;
const peakMegabytes = process.resourceUsage().maxRSS / 1024;
const usable = analysis.pulls.filter((pull) => pull.usable).length;
const detail = `${analysis.rowCount} rows, ${analysis.pulls.length} pulls, ${usable} of them usable`;
process.stdout.write(JSON.stringify({ seconds, peakMegabytes, detail }));
