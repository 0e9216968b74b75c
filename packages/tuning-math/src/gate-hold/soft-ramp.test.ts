import { describe, expect, it } from 'vitest';
import { softRamp } from './soft-ramp.js';

describe('softRamp', () => {
  // Source: the standard library's exponential and logarithm, the expression written out.
  it.each([-40, -16, -15.999, -7.3, -1, -0.004, 0, 0.004, 0.7, 3.21, 15.999, 16, 40])(
    'is log(1 + exp(x)) at %s',
    (x) => {
      expect(Math.abs(softRamp(x) - Math.log1p(Math.exp(x)))).toBeLessThan(2e-6);
    },
  );
});
