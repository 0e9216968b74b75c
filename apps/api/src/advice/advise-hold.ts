import type { GateHoldAdvice, GateHoldAdviceRequest } from '@pullbook/contracts';
import { adviseGateHold } from '@pullbook/tuning-math';

/**
 * The next step in the search for the highest gate hold, as the API tells it.
 *
 * @throws ArgumentError
 */
export function adviseHold(request: GateHoldAdviceRequest): GateHoldAdvice {
  const { action, holdPct, prediction, reasons, gain } = adviseGateHold(request);
  return {
    action,
    holdPct,
    prediction: prediction && { ...prediction },
    reasons: reasons.map(({ code, text }) => ({ code, text })),
    gain: gain && { ...gain },
  };
}
