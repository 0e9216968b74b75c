import { OutOfRangeError, TooFewPointsError } from '../errors.js';
import { requireNumber } from '../require-number.js';
import type { CorrectionPull, CorrectionRequest } from './correction-types.js';

const NAME = 'adviseCorrection';
const MOST_PULLS = 200;

/** Refuses a request that no advice can rest on, naming the field. @throws TooFewPointsError, NotFiniteError, OutOfRangeError */
export function checkCorrectionRequest({ controller, goal, pulls }: CorrectionRequest): void {
  requireNumber(NAME, 'controller.strengthMin', controller.strengthMin, { min: 0 });
  requireNumber(NAME, 'controller.strengthMax', controller.strengthMax, { min: controller.strengthMin });
  requireNumber(NAME, 'controller.strengthStep', controller.strengthStep, { min: 0, exclusive: true });
  requireNumber(NAME, 'goal.targetKpa', goal.targetKpa, { min: 1, max: 600 });
  requireNumber(NAME, 'goal.toleranceKpa', goal.toleranceKpa, { min: 0.01, max: goal.targetKpa });
  if (pulls.length === 0) {
    const fault = { argument: 'pulls', value: 'none', allowed: 'to hold at least one closed-loop pull' };
    throw new TooFewPointsError(NAME, fault);
  }
  if (pulls.length > MOST_PULLS) {
    const value = `${pulls.length} of them`;
    throw new OutOfRangeError(NAME, { argument: 'pulls', value, allowed: `to be at most ${MOST_PULLS}` });
  }
  const strengths = { min: controller.strengthMin, max: controller.strengthMax };
  pulls.forEach((pull, index) => {
    requireNumber(NAME, `pulls[${index}].strength`, pull.strength, strengths);
    requireNumber(NAME, `pulls[${index}].settledKpa`, pull.settledKpa, { min: 1, max: 1000 });
    checkHunting(pull.hunting, `pulls[${index}].hunting`);
  });
}

function checkHunting(hunting: CorrectionPull['hunting'], at: string): void {
  if (hunting === null) return;
  requireNumber(NAME, `${at}.frequencyHz`, hunting.frequencyHz, { min: 0, max: 1000, exclusive: true });
  requireNumber(NAME, `${at}.amplitudeKpa`, hunting.amplitudeKpa, { min: 0, max: 1000 });
  if (hunting.dampingRatio !== null)
    requireNumber(NAME, `${at}.dampingRatio`, hunting.dampingRatio, { min: -1, max: 1 });
}
