import { checkDutyRequest } from './check-duty-request.js';
import type { DutyDecision } from './decide-duty.js';
import { decideForCar } from './decide-for-car.js';
import { dutyReasons } from './duty-reasons.js';
import type { DutyAdvice, DutyAdviceRequest, DutyCurvePoint, PeakPrediction } from './duty-advice-types.js';
import { sameDuty } from './duty-grid.js';
import { chanceInside, chanceOverCeiling, type DutySituation } from './duty-situation.js';
import { peakQuantiles, type Fineness } from './peak-quantiles.js';
import { predictPeak } from './predict-peak.js';
import { MANY_PULLS } from './response-settings.js';
import { thinPosterior } from './thin-posterior.js';

/** Share of next peaks that a predicted range is meant to hold. */
const LEVEL = 0.95;
const RANGE_SHARES = [(1 - LEVEL) / 2, 0.5, (1 + LEVEL) / 2];
/** Points of the predicted response between the ends of the controller's range. */
const CURVE_INTERVALS = 25;
/** They are drawn, not reckoned with: a thousandth is seen by nobody. */
const CURVE_FINENESS: Fineness = { bins: 16, tolerance: 1e-3 };
/** With many pulls, so few explanations draw it as well. */
const FEW_EXPLANATIONS = 80;
/** A pull more likely false than this proves nothing. */
const FALSE_CHANCE = 0.5;

/**
 * The next step towards a target peak: which duty to pull or repeat, or to accept or to stop, with the predicted
 * peak, its chance of passing the ceiling, and the reasons in plain words. Ask it before every pull.
 *
 * It never advises a duty that is off the controller's grid, more than `stepLimit` points above the highest duty
 * pulled so far, or whose predicted chance of passing the ceiling is above `riskLimit`; but the first pull
 * may be at the lowest setting up to a chance of 10 %: nothing less can be asked of the car.
 * It advises; a qualified person decides, on a closed course or dynamometer, with over-boost cut set.
 *
 * @param request duties in %, pressures in kPa gauge, usable pulls in the order in which they were made
 * @returns action, duty (null with `stop`), prediction at that duty, reasons (the first one decided), predicted
 *   response over the whole range, and for an accept the positions of the pulls that prove it
 * @throws {NotFiniteError} a number that is NaN or infinite, named by its path, as in `pulls[2].peakKpa`
 * @throws {OutOfRangeError} a duty outside the controller's range, a ceiling not above the target, and the like
 * Cost: some milliseconds with 20 pulls; the first call builds a table of possible responses (about 0.1 s).
 * Source: common practice for the rules of step and ceiling, no source; Bayesian model averaging for the
 * response (see `responsePosterior`). Measured in docs/bench/advice.md.
 * @example
 * adviseDuty({
 *   controller: { dutyMin: 0, dutyMax: 100, dutyStep: 1 },
 *   goal: { targetKpa: 140, toleranceKpa: 4, ceilingKpa: 155 },
 *   baseKpa: 55,
 *   pulls: [{ duty: 10, peakKpa: 62.1 }],
 * }); // { action: 'pull', duty: 20, ... }
 */
export function adviseDuty(request: DutyAdviceRequest): DutyAdvice {
  checkDutyRequest(request);
  const { situation, decision } = decideForCar(request);
  const prediction = decision.duty === null ? null : predictionAt(situation, decision.duty);
  const inside =
    decision.duty === null
      ? null
      : chanceInside(predictPeak(situation.posterior, decision.duty), situation.levels);
  const provedBy = decision.action === 'accept' ? provingPulls(situation, decision) : [];
  return {
    action: decision.action,
    duty: decision.duty,
    prediction,
    reasons: dutyReasons({ situation, decision, prediction, inside, provedBy }),
    curve: predictedCurve(situation),
    provedBy,
    probabilityInsideTolerance: inside,
    scatterPct: 100 * situation.posterior.scatter,
  };
}

function predictionAt(situation: DutySituation, duty: number): PeakPrediction {
  const { targetKpa } = situation.request.goal;
  const [low = 0, median = 0, high = 0] = peakQuantiles(predictPeak(situation.posterior, duty), RANGE_SHARES);
  return {
    medianKpa: targetKpa * Math.exp(median),
    lowKpa: targetKpa * Math.exp(low),
    highKpa: targetKpa * Math.exp(high),
    level: LEVEL,
    probabilityOverCeiling: chanceOverCeiling(situation, duty),
  };
}

/** Pulls at the accepted duty that are not taken for false ones. */
function provingPulls({ request, posterior }: DutySituation, { duty }: DutyDecision): number[] {
  const proving: number[] = [];
  request.pulls.forEach((pull, index) => {
    if (duty === null || !sameDuty(pull.duty, duty)) return;
    if ((posterior.falseChances[index] ?? 0) < FALSE_CHANCE) proving.push(index);
  });
  return proving;
}

/** Ranges of the next peak over the controller's range; levelled so that none falls as duty rises. */
function predictedCurve(situation: DutySituation): DutyCurvePoint[] {
  const { grid, thin, request } = situation;
  const drawn = request.pulls.length > MANY_PULLS ? thinPosterior(thin, FEW_EXPLANATIONS) : thin;
  const stride = Math.max(1, Math.floor((grid.length - 1) / CURVE_INTERVALS));
  let [low, median, high] = [0, 0, 0];
  return grid
    .filter((_, index) => index % stride === 0 || index === grid.length - 1)
    .map((duty) => {
      const logs = peakQuantiles(predictPeak(drawn, duty), RANGE_SHARES, CURVE_FINENESS);
      const [lowKpa = 0, medianKpa = 0, highKpa = 0] = logs.map(
        (log) => request.goal.targetKpa * Math.exp(log),
      );
      [low, median, high] = [Math.max(low, lowKpa), Math.max(median, medianKpa), Math.max(high, highKpa)];
      return { duty, medianKpa: median, lowKpa: low, highKpa: high };
    });
}
