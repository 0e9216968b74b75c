import type { HoldPull } from './gate-hold-types.js';
import { pullOvershoot } from './pull-overshoot.js';

/** What a car's first pulls let expect of it before the hold shows any effect. */
export interface HoldPrior {
  /** How likely a knee is, up to a factor. */
  readonly kneeDensity: (kneePct: number) => number;
  /** Boost gained in one usual period of the solenoid, % of target: how far apart the moments of letting go lie. */
  readonly jitterPct: number;
}

/** Middle and spread of the knee, % of target, for a rise time of one second and no overshoot without hold. */
const KNEE_PCT = 80;
const SPREAD_PCT = 9;
const SPREAD_WITHOUT_RISE_PCT = 13;
/** Points later for each factor e of slower rise: the longer boost takes, the less it gains after letting go. */
const POINTS_PER_LOG_RISE = 8;
/** Points earlier for each point of overshoot that is there without hold: such a gate is slow to open. */
const POINTS_PER_OWN = 0.8;
const OWN_RANGE_PCT = [0, 15] as const;
const RISE_RANGE_S = [0.3, 6] as const;
const USUAL_RISE_S = 1.3;
/** Share of the belief that none of this holds for the car: evenly over all knees. */
const ODD_SHARE = 0.06;
const KNEE_RANGE_PCT = 105;
/** A period of 1/22 s while boost rises by 100 % of target in the rise time. */
const JITTER_PCT_S = 4.5;

/**
 * What the rise time and the overshoot without hold tell of the knee and of the scatter past it.
 *
 * Source: common practice and the physical model in packages/practice-car (cars of development, not those of
 * the benchmark); no published source.
 */
export function holdPrior(pulls: readonly HoldPull[]): HoldPrior {
  const lowest = pulls.reduce<HoldPull | null>(
    (low, pull) => (low === null || pull.holdPct < low.holdPct ? pull : low),
    null,
  );
  const rises = pulls.flatMap((pull) =>
    (pull.riseTimeS ?? 0) > 0 ? [clamp(pull.riseTimeS ?? 0, RISE_RANGE_S)] : [],
  );
  const isTimed = rises.length > 0;
  const own = lowest === null ? 0 : clamp(pullOvershoot(lowest), OWN_RANGE_PCT);
  const slowest = isTimed ? Math.max(...rises) : USUAL_RISE_S;
  const centre = KNEE_PCT + POINTS_PER_LOG_RISE * Math.log(slowest) - POINTS_PER_OWN * own;
  const spread = isTimed ? SPREAD_PCT : SPREAD_WITHOUT_RISE_PCT;
  const kneeDensity = (kneePct: number): number => {
    const z = (kneePct - centre) / spread;
    const bell = Math.exp(-0.5 * z * z) / (spread * Math.sqrt(2 * Math.PI));
    return ODD_SHARE / KNEE_RANGE_PCT + (1 - ODD_SHARE) * bell;
  };
  return { kneeDensity, jitterPct: JITTER_PCT_S / (isTimed ? Math.min(...rises) : USUAL_RISE_S) };
}

const clamp = (value: number, [low, high]: readonly [number, number]): number =>
  Math.min(high, Math.max(low, value));
