import { noLimits } from '@pullbook/contracts';
import { describe, expect, it } from 'vitest';
import { lowestCarLimit } from './lowest-car-limit.js';

describe('lowestCarLimit', () => {
  it('names the first of the lowest limits', () => {
    const limits = { ...noLimits, sensorFullScaleKpa: 200, turboKpa: 165, engineKpa: 165 };
    expect(lowestCarLimit(limits)).toEqual({ name: "turbo's limit", limitKpa: 165 });
  });

  it('is null for a car of which no limit is known', () => {
    expect(lowestCarLimit(noLimits)).toBeNull();
  });
});
