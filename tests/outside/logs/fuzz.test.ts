import { describe, expect, it } from 'vitest';
import { fuzzReader } from '../../bench/logs/fuzz-reader.js';

describe('mutated log files', () => {
  it('end in a clear refusal or a sound result, in time, with no silent unit (300 files; the bench runs 20,000)', () => {
    const result = fuzzReader(300);
    expect([result.crashes, result.unsound, result.silentUnits]).toEqual([[], [], []]);
    expect(result.analysed).toBeGreaterThan(100);
    expect(result.refused).toBeGreaterThan(20);
  });
});
