import type { Reason } from '@pullbook/contracts';
import { amount, sentence } from '@pullbook/tuning-math';

/** What a driven pull is held against. */
export interface PullBounds {
  readonly ceilingKpa: number;
  readonly stepLimit: number;
  /** Highest duty of the usable pulls before it; the lower end of the controller's range at first. */
  readonly highestDutyPct: number;
  /** Stored duty that an earlier visit proved on this car: pulling at it, or below, is no step up; null where none is. */
  readonly provenDutyPct: number | null;
  /** Highest gate hold stored or pulled before it, % of target; null where none is known yet. */
  readonly highestHoldPct: number | null;
}

/** A pull as it was driven. */
export interface WarnedPull {
  readonly dutyPct: number;
  readonly holdPct: number | null;
  readonly peakKpa: number;
}

/** Settings are typed in decimals: 30.1 is ten points above 20.1. */
const STEP_SLACK = 1e-6;

/**
 * What to mind about a pull that was driven anyway: it is recorded as it was, and the book says so.
 *
 * @returns one entry each for a peak past the ceiling, a duty and a gate hold above the step limit; empty where all was kept
 */
export function pullWarnings(pull: WarnedPull, bounds: PullBounds): Reason[] {
  const { ceilingKpa, stepLimit, highestDutyPct, highestHoldPct, provenDutyPct } = bounds;
  const warnings: Reason[] = [];
  if (pull.peakKpa > ceilingKpa) {
    const { text, pieces } =
      sentence`The peak (${amount(pull.peakKpa, 'kPa')}) passed the ceiling (${amount(ceilingKpa, 'kPa')}). Stop, find out why, and do not raise duty.`;
    warnings.push({ code: 'past-ceiling', text, pieces: [...pieces] });
  }
  const step = pull.dutyPct <= (provenDutyPct ?? -Infinity) + STEP_SLACK ? 0 : pull.dutyPct - highestDutyPct;
  if (step > stepLimit + STEP_SLACK) {
    const text = `Duty was raised by ${Number(step.toFixed(2))} points at once; this workshop allows ${stepLimit}.`;
    warnings.push({ code: 'over-step-limit', text });
  }
  const holdStep = pull.holdPct === null || highestHoldPct === null ? 0 : pull.holdPct - highestHoldPct;
  if (holdStep > stepLimit + STEP_SLACK) {
    const text = `Gate hold was raised by ${Number(holdStep.toFixed(2))} points at once; this workshop allows ${stepLimit}.`;
    warnings.push({ code: 'hold-over-step-limit', text });
  }
  return warnings;
}
