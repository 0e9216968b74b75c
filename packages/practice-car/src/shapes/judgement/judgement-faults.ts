import { drawBetween } from '../../random/draw-between.js';
import type { Random } from '../../random/seeded-random.js';
import type { FaultDraw, FaultGround, FaultyMeanKpa } from '../fault-draw.js';

/** One fault of the judgement set, what is seen of it, and its share of all cars. */
export interface JudgementFault {
  readonly name: string;
  readonly kind: 'soaring-fault' | 'falling-fault';
  readonly share: number;
  readonly draw: FaultDraw;
}

/**
 * Faults on which the advice is judged, told by their causes and not by what the development faults do. They come
 * suddenly, at a pull drawn from those on the way to the target. Ranges are reasoned; common practice, no source.
 */
export const JUDGEMENT_FAULTS: readonly JudgementFault[] = [
  { name: 'hose off the actuator', kind: 'soaring-fault', share: 0.03, draw: actuatorHoseOff },
  { name: 'gate sticks', kind: 'soaring-fault', share: 0.02, draw: gateSticks },
  { name: 'leak', kind: 'falling-fault', share: 0.03, draw: leak },
  { name: 'hose off the solenoid', kind: 'falling-fault', share: 0.03, draw: solenoidHoseOff },
];

/** Nothing opens the gate: whatever the duty, the turbocharger makes all it can, well over the ceiling. */
function actuatorHoseOff(random: Random, { meanKpa, controller, goal }: FaultGround): FaultyMeanKpa {
  const all = meanKpa(controller.dutyMax) * drawBetween(random, 1, 1.2);
  const peakKpa = Math.max(all, goal.ceilingKpa * drawBetween(random, 1.15, 1.6));
  return () => peakKpa;
}

/** The gate opens late: so many kilopascals more at every duty, and over the ceiling. */
function gateSticks(random: Random, { goal }: FaultGround): FaultyMeanKpa {
  const moreKpa = goal.targetKpa * drawBetween(random, 0.2, 0.7);
  const leastKpa = goal.ceilingKpa * drawBetween(random, 1.15, 1.35);
  return (healthyKpa) => Math.max(healthyKpa + moreKpa, leastKpa);
}

/**
 * A hole in the charge pipe: the loss goes with the root of the pressure, so that it takes a larger share of little
 * boost. 12 to 40 % are lost at the target.
 */
function leak(random: Random, { goal }: FaultGround): FaultyMeanKpa {
  const lost = drawBetween(random, 0.12, 0.4);
  const hole = lost / Math.sqrt(1 - lost);
  return (healthyKpa) => {
    const root = (Math.sqrt(hole * hole + (4 * healthyKpa) / goal.targetKpa) - hole) / 2;
    return goal.targetKpa * root * root;
  };
}

/** The actuator sees full boost: whatever the duty, only the floor is left. */
function solenoidHoseOff(_random: Random, { meanKpa }: FaultGround): FaultyMeanKpa {
  return () => meanKpa(0);
}
