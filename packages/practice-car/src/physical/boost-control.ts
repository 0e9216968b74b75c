export interface BoostControlSettings {
  readonly dutyPct: number;
  /** Share of the target up to which the gate is kept shut; 0 = not at all. */
  readonly gateHoldPct: number;
  readonly targetKpa: number;
  /** 0 = open loop; 1 is a mild correction, 5 a fierce one. */
  readonly correctionStrength: number;
}

/** Duty for the coming period, from the boost that the controller sees. */
export type BoostControl = (boostKpa: number, periodS: number) => number;

/** Proportional and integral action of correction strength 1, in duty points. */
export const PROPORTIONAL_PCT_PER_KPA = 0.08;
export const INTEGRAL_PCT_PER_KPA_S = 0.5;
/** Correction acts from this share of the target on, and may move duty so far. */
const CORRECTION_FROM_RATIO = 0.7;
const AUTHORITY_PCT = 25;
/** The hold is armed again once boost falls below this share of where it lets go. */
const REARM_RATIO = 0.4;

const within = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/**
 * An open-loop boost controller with gate hold and, when asked, closed-loop correction.
 *
 * Until boost first reaches gate hold % of the target the solenoid is energised throughout, so that the gate stays
 * shut; then it runs at the set duty. Correction adds strength * (P e + I integral of e), e = target - boost, within
 * +-25 points; the integral stands still while the sum is at a limit.
 *
 * @param settings what is stored in the preset
 * Source: PI control with conditional integration (common practice; Astrom and Hagglund, PID Controllers, section 3.5).
 */
export function controlBoost(settings: BoostControlSettings): BoostControl {
  const { dutyPct, gateHoldPct, targetKpa, correctionStrength } = settings;
  const letsGoKpa = (gateHoldPct / 100) * targetKpa;
  let isHolding = gateHoldPct > 0;
  let integralPct = 0;
  const corrected = (boostKpa: number, periodS: number): number => {
    const errorKpa = targetKpa - boostKpa;
    if (boostKpa < CORRECTION_FROM_RATIO * targetKpa) return dutyPct;
    const proportional = correctionStrength * PROPORTIONAL_PCT_PER_KPA * errorKpa;
    const grown = integralPct + correctionStrength * INTEGRAL_PCT_PER_KPA_S * errorKpa * periodS;
    const wanted = proportional + grown;
    const low = Math.max(-AUTHORITY_PCT, -dutyPct);
    const high = Math.min(AUTHORITY_PCT, 100 - dutyPct);
    if (wanted > low && wanted < high) integralPct = grown;
    return dutyPct + within(wanted, low, high);
  };
  return (boostKpa, periodS) => {
    if (gateHoldPct > 0 && boostKpa < REARM_RATIO * letsGoKpa) {
      isHolding = true;
      integralPct = 0;
    }
    if (isHolding && boostKpa >= letsGoKpa) isHolding = false;
    if (isHolding) return 100;
    return correctionStrength > 0 ? corrected(boostKpa, periodS) : dutyPct;
  };
}
