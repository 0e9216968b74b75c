import fs from 'node:fs';
import {
  analyseLog,
  createLogReader,
  LogError,
  analyseSamples,
  type LogAnalysis,
  type LogPull,
} from '@pullbook/tuning-math';
import { describe, expect, it } from 'vitest';
import { PEAK_KPA } from '../../logs/base-rows.js';
import { CORPUS, type CorpusFile } from '../../logs/corpus.js';

const bytesOf = ({ name }: CorpusFile): Uint8Array => {
  return new Uint8Array(fs.readFileSync(new URL(`../../logs/files/${name}`, import.meta.url)));
};

function errorOf(run: () => unknown): LogError {
  try {
    run();
  } catch (fault) {
    if (fault instanceof LogError) return fault;
    throw fault;
  }
  throw new Error('no error was thrown');
}

type ExpectedAnalysis = Exclude<CorpusFile['expected'], { readonly error: string }>;

function expectPull(pull: LogPull, expected: ExpectedAnalysis): void {
  const codes = pull.reasons.map(({ code }) => code);
  if (expected.usable !== undefined) expect([pull.usable, codes]).toEqual([expected.usable, codes]);
  for (const reason of expected.reasons ?? []) expect(codes).toContain(reason);
  const peakKpa = expected.peakKpa === undefined ? PEAK_KPA : expected.peakKpa;
  if (peakKpa !== null) expect(Math.abs((pull.peakKpa ?? NaN) / peakKpa - 1)).toBeLessThan(0.01);
}

function expectColumns(analysis: LogAnalysis, expected: ExpectedAnalysis): void {
  const used = analysis.channels.find(
    ({ quantity }) => quantity === 'boost-pressure' || quantity === 'manifold-absolute-pressure',
  );
  if (expected.boostHeader !== undefined) expect(used?.header).toBe(expected.boostHeader);
  if (expected.boostUnit !== undefined) expect(used?.unit).toBe(expected.boostUnit);
}

function expectAnalysis(analysis: LogAnalysis, { expected }: CorpusFile): void {
  if ('error' in expected) return;
  expect(analysis.pulls.length).toBe(expected.pulls);
  for (const pull of analysis.pulls) expectPull(pull, expected);
  const startS = analysis.pulls[0]?.startS ?? NaN;
  if (expected.startS !== undefined) expect(Math.abs(startS - expected.startS)).toBeLessThan(0.2);
  const warnings = analysis.warnings.map(({ code }) => code);
  for (const warning of expected.warnings ?? []) expect(warnings).toContain(warning);
  expectColumns(analysis, expected);
}

describe('the corpus of ugly files', () => {
  it('holds at least 60 files, and the folder holds what corpus.ts says', () => {
    expect(CORPUS.length).toBeGreaterThanOrEqual(60);
    for (const file of CORPUS) expect(Buffer.from(bytesOf(file)).equals(file.bytes)).toBe(true);
  });

  it.each(CORPUS.map((file) => ({ name: file.name, file })))('$name comes out as it must', ({ file }) => {
    if ('error' in file.expected) {
      const fault = errorOf(() => analyseLog(bytesOf(file), file.options));
      expect(fault.code).toBe(file.expected.error);
      expect(fault.message.length).toBeGreaterThan(10);
      expect(fault.hint.length).toBeGreaterThan(5);
      return;
    }
    expectAnalysis(analyseLog(bytesOf(file), file.options), file);
  });

  it('comes out the same, to the last digit, in pieces of 997 bytes', () => {
    for (const file of CORPUS.filter(({ expected }) => !('error' in expected))) {
      const reader = createLogReader(file.options);
      const bytes = bytesOf(file);
      for (let start = 0; start < bytes.length; start += 997) reader.push(bytes.subarray(start, start + 997));
      expect(analyseSamples(reader.finish(), file.options)).toEqual(analyseLog(bytes, file.options));
    }
  });
});
