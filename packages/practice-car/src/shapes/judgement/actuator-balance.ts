import { drawBetween } from '../../random/draw-between.js';
import type { Random } from '../../random/seeded-random.js';

const BISECTIONS = 50;
const LAST_DUTY = 100;

/** An actuator with its bleed and the turbocharger behind it; pressures in those at which the gate cracks open. */
interface Actuator {
  /** Share of the way to fully open that the gate moves for one cracking pressure more. */
  readonly travel: number;
  /** Peak with the gate shut. */
  readonly shutPeak: number;
  /** How much a fully open gate takes: peak shut over peak open, less 1. */
  readonly gateTakes: number;
  /** Force of the exhaust gas on the valve, as a share of the force of the same boost on the diaphragm. */
  readonly exhaustShare: number;
  /** Area of the open solenoid over that of the restrictor before it. */
  readonly bleedArea: number;
  /** Duty at which the solenoid begins to pass air, and at which it is always open. */
  readonly opens: number;
  readonly full: number;
}

/**
 * No formula but a table of solutions: at each duty, the peak at which gate opening (spring against diaphragm and
 * exhaust gas) and turbocharger (less boost the further the gate opens) agree, straight between whole duties.
 * The pressure that reaches the actuator follows from two orifices in series, 1 / (1 + (area ratio)²).
 * Source of that: the orifice equation with equal flows (Bernoulli); ranges are reasoned, common practice, no source.
 */
export function actuatorBalance(random: Random, steepness: number): (duty: number) => number {
  const opens = drawBetween(random, 5, 38);
  const actuator: Actuator = {
    travel: drawBetween(random, 1, 4),
    shutPeak: drawBetween(random, 2.2, 4.5),
    gateTakes: drawBetween(random, 2.5, 8),
    exhaustShare: drawBetween(random, 0.02, 0.25),
    bleedArea: drawBetween(random, 1.1, 2.4),
    opens,
    full: opens + (drawBetween(random, 82, 106) - opens) / steepness,
  };
  const table = Float64Array.from({ length: LAST_DUTY + 1 }, (_, duty) => balancedPeak(actuator, duty));
  const base = table[0] ?? 1;
  return (duty) => {
    const below = Math.min(Math.max(Math.floor(duty), 0), LAST_DUTY - 1);
    const [low = 0, high = 0] = table.subarray(below, below + 2);
    return (low + (high - low) * Math.min(Math.max(duty - below, 0), 1)) / base;
  };
}

/** The one peak that the gate opening it causes would make: found by halving, since one rises and one falls. */
function balancedPeak(actuator: Actuator, duty: number): number {
  const { travel, shutPeak, gateTakes, exhaustShare, bleedArea, opens, full } = actuator;
  const open = Math.min(Math.max((duty - opens) / (full - opens), 0), 1);
  const reaches = 1 / (1 + (bleedArea * open) ** 2) + exhaustShare;
  let low = 0;
  let high = shutPeak;
  for (let halving = 0; halving < BISECTIONS; halving += 1) {
    const peak = (low + high) / 2;
    const opening = Math.min(Math.max(travel * (peak * reaches - 1), 0), 1);
    if (shutPeak / (1 + gateTakes * opening) > peak) low = peak;
    else high = peak;
  }
  return (low + high) / 2;
}
