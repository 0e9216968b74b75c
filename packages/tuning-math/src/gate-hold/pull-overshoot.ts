import type { HoldPull } from './gate-hold-types.js';

/** Overshoot of a pull, (peak - settled) / settled, %. */
export function pullOvershoot(pull: HoldPull): number {
  return (100 * (pull.peakKpa - pull.settledKpa)) / pull.settledKpa;
}
