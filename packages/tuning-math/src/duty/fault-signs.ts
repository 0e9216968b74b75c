import { chancePeakAbove, predictPeak } from './predict-peak.js';
import { responsePosterior } from './response-posterior.js';
import { scalePulls } from './scaled-pulls.js';
import type { DutySituation } from './duty-situation.js';

/** How surprising the last pulls are to what the pulls before them say. */
export interface FaultSigns {
  /** Chance of a peak at least as high as the last one. */
  readonly chanceAsHigh: number;
  /** Chance of a peak at most as high as the last one. */
  readonly chanceAsLow: number;
  /** The larger of the last two pulls' chances, both judged by the pulls before the two; 1 where there are too few. */
  readonly bothAsLow: number;
  readonly bothAsHigh: number;
}

const NO_SIGNS: FaultSigns = { chanceAsHigh: 1, chanceAsLow: 1, bothAsLow: 1, bothAsHigh: 1 };

/** Judges the last two pulls by the pulls before them. Costs two more posteriors. */
export function faultSigns(situation: DutySituation): FaultSigns {
  const { count } = situation.pulls;
  if (count === 0) return NO_SIGNS;
  const [last] = chancesAbove(situation, 1);
  const chanceAsHigh = last ?? 1;
  const pair = count < 3 ? [] : chancesAbove(situation, 2);
  if (pair.length < 2) return { ...NO_SIGNS, chanceAsHigh, chanceAsLow: 1 - chanceAsHigh };
  return {
    chanceAsHigh,
    chanceAsLow: 1 - chanceAsHigh,
    bothAsLow: Math.max(...pair.map((chance) => 1 - chance)),
    bothAsHigh: Math.max(...pair),
  };
}

/** For each of the last `held` pulls, the chance of a peak at least as high, by the pulls before them. */
function chancesAbove({ request, pulls }: DutySituation, held: number): number[] {
  const before = request.pulls.slice(0, -held);
  const posterior = responsePosterior(scalePulls(before, request));
  const chances: number[] = [];
  for (let j = pulls.count - held; j < pulls.count; j += 1) {
    chances.push(chancePeakAbove(predictPeak(posterior, pulls.duties[j] ?? 0), pulls.logs[j] ?? 0));
  }
  return chances;
}
