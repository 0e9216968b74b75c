import { chancePeakAbove, predictPeak } from './predict-peak.js';
import { responsePosterior } from './response-posterior.js';
import { scalePulls, type ScaledPulls } from './scaled-pulls.js';
import { drawParticles, type Particles } from './draw-particles.js';
import type { DutySituation } from './duty-situation.js';

/** Curves drawn for this look. */
const SIGN_PARTICLES = 300;

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

/** Judges the last two pulls by the pulls before them. Costs one more draw of curves and two small posteriors. */
export function faultSigns(situation: DutySituation): FaultSigns {
  const { count } = situation.pulls;
  if (count === 0) return NO_SIGNS;
  const particles = drawParticles(pullsBefore(situation, Math.min(2, count)), { count: SIGN_PARTICLES });
  const chanceAsHigh = chancesAbove(situation, particles, 1)[0] as number;
  if (count < 3) return { ...NO_SIGNS, chanceAsHigh, chanceAsLow: 1 - chanceAsHigh };
  const pair = chancesAbove(situation, particles, 2);
  return {
    chanceAsHigh,
    chanceAsLow: 1 - chanceAsHigh,
    bothAsLow: Math.max(...pair.map((chance) => 1 - chance)),
    bothAsHigh: Math.max(...pair),
  };
}

function pullsBefore({ request }: DutySituation, held: number): ScaledPulls {
  return scalePulls(request.pulls.slice(0, -held), request);
}

/** For each of the last `held` pulls, the chance of a peak at least as high, by the pulls before them. */
function chancesAbove(situation: DutySituation, particles: Particles, held: number): number[] {
  const { pulls } = situation;
  const posterior = responsePosterior(pullsBefore(situation, held), particles);
  return Array.from({ length: held }, (_, index) => {
    const j = pulls.count - held + index;
    return chancePeakAbove(predictPeak(posterior, pulls.duties[j] as number), pulls.logs[j] as number);
  });
}
