import { drawBetween } from '../../random/draw-between.js';
import type { Random } from '../../random/seeded-random.js';

/**
 * Smooth responses of the judgement set; see `JUDGEMENT_RISES`. Where a rise begins (5 to 65 % duty), over how
 * many points of duty it runs (20 to 60) and how far (0.7 to 2.5 times the base boost) is reasoned from springs and
 * solenoids in use; common practice, no source. The names of the curves are those of mathematics.
 */

/** Sigmoid that starts abruptly and levels off slowly. Source of the curve: Gompertz, Phil. Trans. 115 (1825). */
export function gompertz(random: Random, steepness: number): (duty: number) => number {
  const middle = drawBetween(random, 28, 70);
  const width = drawBetween(random, 7, 16) / steepness;
  const rise = drawBetween(random, 0.8, 2.3);
  const level = (duty: number): number => Math.exp(-Math.exp(-(duty - middle) / width));
  return (duty) => 1 + rise * (level(duty) - level(0));
}

/** Starts slowly and levels off abruptly. Source of the curve: Weibull, J. Appl. Mech. 18 (1951). */
export function weibull(random: Random, steepness: number): (duty: number) => number {
  const scale = drawBetween(random, 42, 90);
  const order = drawBetween(random, 2, 6.5) * Math.sqrt(steepness);
  const rise = drawBetween(random, 0.8, 2.2);
  return (duty) => 1 + rise * (1 - Math.exp(-((duty / scale) ** order)));
}

/** Solenoid that does nothing near either end of its duty range: a polynomial step between two dead zones. */
export function endStops(random: Random, steepness: number): (duty: number) => number {
  const start = drawBetween(random, 5, 45);
  const length = drawBetween(random, 34, 60) / steepness;
  const rise = drawBetween(random, 0.8, 2.2);
  return (duty) => {
    const share = Math.min(Math.max((duty - start) / length, 0), 1);
    return 1 + rise * share ** 3 * (10 + share * (6 * share - 15));
  };
}

/** Steepest right after its dead zone, then ever flatter without an end. */
export function logarithmic(random: Random, steepness: number): (duty: number) => number {
  const start = drawBetween(random, 6, 45);
  const reach = drawBetween(random, 7, 21) / steepness;
  const rise = drawBetween(random, 0.6, 1.3);
  return (duty) => 1 + rise * Math.log1p(Math.max(duty - start, 0) / reach);
}

/** Flat at first, ever steeper after. */
export function catenary(random: Random, steepness: number): (duty: number) => number {
  const reach = drawBetween(random, 19, 36) / steepness;
  const sag = drawBetween(random, 0.06, 0.4);
  return (duty) => 1 + sag * (Math.cosh(duty / reach) - 1);
}
