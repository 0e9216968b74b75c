import { describe, expect, it } from 'vitest';
import { faultOfStop } from './fault-of-stop';
import { whatToLookAt } from './what-to-look-at';

const stopped = (...codes: string[]) => ({ reasons: codes.map((code) => ({ code, text: '' })) });

describe('faultOfStop', () => {
  it.each(['peak-soared', 'ceiling-passed-again', 'response-lost'])('finds %s', (code) => {
    expect(faultOfStop(stopped(code))).toBe(code);
  });

  it('finds none where the car cannot do what is asked, and none in what only adds to a reason', () => {
    for (const code of ['target-out-of-reach', 'floor-over-target', 'scatter-too-wide', 'no-safe-duty'])
      expect(faultOfStop(stopped(code))).toBeNull();
    expect(faultOfStop(stopped('no-duty-in-tolerance', 'peak-soared'))).toBeNull();
    expect(faultOfStop(stopped())).toBeNull();
  });
});

describe('whatToLookAt', () => {
  it.each(['peak-soared', 'ceiling-passed-again', 'response-lost'] as const)(
    'sends to hoses, gate and solenoid after %s, and names each thing once',
    (code) => {
      const looks = whatToLookAt(code);
      expect(new Set(looks).size).toBe(looks.length);
      for (const part of [/hoses/i, /gate/i, /solenoid/i]) expect(looks.join(' ')).toMatch(part);
    },
  );

  it('looks for what lets boost go where it soared, and for leaks where it was lost', () => {
    expect(whatToLookAt('peak-soared').join(' ')).toMatch(/over-boost cut/i);
    expect(whatToLookAt('response-lost').join(' ')).toMatch(/hold pressure/i);
  });
});
