import { amount, sentence, type Sentence } from '../sentences/index.js';
import { formatNumber } from '../units/format-number.js';
import { checkCorrectionRequest } from './check-correction-request.js';
import type { CorrectionAdvice, CorrectionReasonCode, CorrectionRequest } from './correction-types.js';
import { readCorrection, type CorrectionReading } from './read-correction.js';

/** A loop as damped as this settles quickly with little overshoot. */
const WANTED_DAMPING = 0.5;
/** No single step changes the strength by more than these factors. */
const LOWEST_FACTOR = 0.5;
const HIGHEST_FACTOR = 1.25;

/**
 * The next correction strength of a closed-loop controller: lower it where boost hunts, raise it where boost
 * settles off the target without hunting, keep it where neither, and stop where strength is not the cause.
 *
 * @param request controller's range, target and tolerance, closed-loop pulls
 * @returns action, strength on the controller's grid, figures at the last strength, reasons
 * @throws TooFewPointsError for no pull; NotFiniteError, OutOfRangeError naming the field
 * Cost: O(n).
 * Source: in a second-order loop the damping ratio goes with one over the root of the loop gain (Ogata,
 * Modern Control Engineering, section 5.3), so that strength · (damping / 0.5)² would bring it to 0.5; at
 * most a half less or a quarter more at a time. The rest is common practice, no source.
 */
export function adviseCorrection(request: CorrectionRequest): CorrectionAdvice {
  checkCorrectionRequest(request);
  const reading = readCorrection(request);
  if (reading.isHunting && reading.isSagging && reading.strength <= request.controller.strengthMin) {
    return answer(reading, 'stop', null, ['hunting-and-sagging']);
  }
  if (reading.isHunting && reading.isDeafToStrength) {
    return answer(reading, 'stop', null, ['hunting-not-from-correction']);
  }
  if (reading.isHunting) return lower(request, reading);
  if (reading.isSagging) return raise(request, reading);
  return answer(reading, 'keep', reading.strength, ['steady']);
}

function lower({ controller }: CorrectionRequest, reading: CorrectionReading): CorrectionAdvice {
  if (reading.strength <= controller.strengthMin)
    return answer(reading, 'stop', null, ['at-lowest-strength']);
  const damping = reading.dampingRatio ?? 0;
  const factor = Math.max(LOWEST_FACTOR, Math.min(0.95, (damping / WANTED_DAMPING) ** 2));
  const wished = Math.max(reading.steadyStrength ?? 0, reading.strength * factor);
  const highest = reading.strength - controller.strengthStep;
  const strength = Math.max(controller.strengthMin, onGrid(Math.min(wished, highest), controller));
  return answer(reading, 'lower', strength, ['hunting']);
}

function raise({ controller }: CorrectionRequest, reading: CorrectionReading): CorrectionAdvice {
  const { strengthMax, strengthStep } = controller;
  // Halfway to a strength that was seen to hunt, so that the search closes in instead of swinging.
  const roof =
    reading.huntingStrength === null ? strengthMax : (reading.strength + reading.huntingStrength) / 2;
  const wished = Math.max(reading.strength * HIGHEST_FACTOR, reading.strength + strengthStep);
  const strength = onGrid(Math.min(wished, roof, strengthMax), controller);
  if (strength <= reading.strength) {
    const code = reading.huntingStrength === null ? 'at-highest-strength' : 'hunting-and-sagging';
    return answer(reading, 'stop', null, [code]);
  }
  return answer(reading, 'raise', strength, ['sagging']);
}

function onGrid(value: number, { strengthMin, strengthStep }: CorrectionRequest['controller']): number {
  const steps = Math.floor((value - strengthMin) / strengthStep + 1e-9);
  return Number((strengthMin + steps * strengthStep).toFixed(9));
}

function answer(
  reading: CorrectionReading,
  action: CorrectionAdvice['action'],
  strength: number | null,
  codes: readonly CorrectionReasonCode[],
): CorrectionAdvice {
  const { settledErrorKpa, frequencyHz, dampingRatio } = reading;
  const reasons = codes.map((code) => ({ code, ...WORDS[code](reading) }));
  return { action, strength, settledErrorKpa, frequencyHz, dampingRatio, reasons };
}

const swing = (reading: CorrectionReading): Sentence => {
  const frequency = amount(reading.frequencyHz ?? 0, 'Hz');
  return sentence`${frequency}, damping ratio ${formatNumber(reading.dampingRatio ?? 0, 2)}`;
};
const error = (reading: CorrectionReading): Sentence => {
  const side = reading.settledErrorKpa < 0 ? 'below' : 'above';
  return sentence`${amount(Math.abs(reading.settledErrorKpa), 'kPa')} ${side} target`;
};

const WORDS: Readonly<Record<CorrectionReasonCode, (reading: CorrectionReading) => Sentence>> = {
  steady: (reading) =>
    sentence`Boost settles ${error(reading)} and does not hunt: keep the correction strength.`,
  hunting: (reading) => sentence`Boost hunts at ${swing(reading)}: the correction is too strong.`,
  sagging: (reading) =>
    sentence`Boost settles ${error(reading)} without hunting: the correction is too weak.`,
  'at-lowest-strength': (reading) =>
    sentence`Boost hunts at ${swing(reading)} at the lowest correction strength: look at actuator, hoses and solenoid.`,
  'at-highest-strength': (reading) =>
    sentence`Boost settles ${error(reading)} at the highest correction strength: find the duty again.`,
  'hunting-and-sagging': (reading) =>
    sentence`Boost settles ${error(reading)}, and a stronger correction hunts: no strength cures both. Find the duty again, look for a leak.`,
  'hunting-not-from-correction': (reading) =>
    sentence`Boost still hunts at ${swing(reading)} although the correction was lowered: the cause lies elsewhere, such as a sticking actuator.`,
};
