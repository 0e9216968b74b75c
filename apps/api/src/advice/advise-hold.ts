import type { GateHoldAdvice, GateHoldAdviceRequest } from '@pullbook/contracts';
import { adviseGateHold, type GateHoldAdvice as MathAdvice } from '@pullbook/tuning-math';

/**
 * The next step in the search for the highest gate hold, as the API tells it.
 *
 * @throws ArgumentError
 */
export function adviseHold(request: GateHoldAdviceRequest): GateHoldAdvice {
  return presentGateHoldAdvice(adviseGateHold(request));
}

/** An answer of the tuning math as the API tells it. */
export function presentGateHoldAdvice(answer: MathAdvice): GateHoldAdvice {
  const { action, holdPct, prediction, reasons, gain } = answer;
  return {
    action,
    holdPct,
    prediction: prediction && { ...prediction },
    reasons: reasons.map(({ code, text, pieces }) => ({ code, text, pieces: [...pieces] })),
    gain: gain && { ...gain },
  };
}
