import type { RiseDraw } from '../rise-draw.js';
import { actuatorBalance } from './actuator-balance.js';
import { creepingLogistic, cubicPieces, doubleKnee, ripple, snap } from './broken-rises.js';
import { catenary, endStops, gompertz, logarithmic, weibull } from './smooth-rises.js';

/**
 * FOR JUDGEMENT ONLY. Nobody looks at how single cars of these shapes fare while a rule of the advice is being
 * settled, and nothing in `packages/tuning-math` can reach them (the arrows of the house forbid it). What is
 * learnt from them goes into the table of `npm run bench:advice`, not into the advice. Once rules were settled
 * with them in sight, they belong to the development shapes, and new ones take their place.
 *
 * They are other formulas than the development shapes and than the curves in the advice's own library. Their
 * ranges were set so that people's methods (ladders, interpolation) do as well and as badly on them as on cars in
 * general; the advice was not asked.
 */
export const JUDGEMENT_RISES: Readonly<Record<string, RiseDraw>> = {
  gompertz,
  weibull,
  'end stops': endStops,
  logarithmic,
  catenary,
  'cubic pieces': cubicPieces,
  'double knee': doubleKnee,
  ripple,
  snap,
  'creeping logistic': creepingLogistic,
  'actuator balance': actuatorBalance,
};
