import type { Damage } from '../faults/damage.js';
import { AIR_R } from './gas.js';
import { orificeFlow } from './orifice-flow.js';
import type { SolenoidPart } from './physical-car.js';

export interface LinePressures {
  /** Absolute, at the compressor outlet, where the actuator's pressure comes from. */
  readonly sourcePa: number;
  readonly ambientPa: number;
  readonly liftPa: number;
  readonly shutPa: number;
}

export interface LineRates {
  readonly liftPaPerS: number;
  readonly shutPaPerS: number;
}

/** Under the bonnet; the small lines take their surroundings' temperature. */
const LINE_K = 320;
/** Area of a hose end that has come off. */
const OPEN_HOSE_M2 = 1.2e-5;

interface Ways {
  readonly feedLiftM2: number;
  readonly ventLiftM2: number;
  readonly feedShutM2: number;
  readonly ventShutM2: number;
}

/** Which openings join the two chambers to the source and to the open air, for each way of plumbing. */
function waysOf(solenoid: SolenoidPart, isValveOpen: boolean): Ways {
  const { restrictorM2, valveM2 } = solenoid;
  const shut = { feedShutM2: 0, ventShutM2: valveM2 };
  if (solenoid.plumbing === 'bleed')
    return { feedLiftM2: restrictorM2, ventLiftM2: isValveOpen ? valveM2 : 0, ...shut };
  if (solenoid.plumbing === 'interrupt') {
    return isValveOpen
      ? { feedLiftM2: 0, ventLiftM2: valveM2, ...shut }
      : { feedLiftM2: restrictorM2, ventLiftM2: 0, ...shut };
  }
  const feed = { feedLiftM2: restrictorM2, ventLiftM2: 0 };
  return isValveOpen
    ? { ...feed, feedShutM2: valveM2, ventShutM2: 0 }
    : { ...feed, feedShutM2: 0, ventShutM2: valveM2 };
}

/** A hose that is off empties its chamber: what a two-chamber solenoid feeds is the far side. */
function brokenWays(ways: Ways, solenoid: SolenoidPart, damage: Damage): Ways {
  const isTwoChamber = solenoid.plumbing === 'two-chamber';
  const liftLost =
    damage.isActuatorLineOff || (damage.isSolenoidLineOff && solenoid.plumbing === 'interrupt');
  const lost = liftLost ? { ...ways, feedLiftM2: 0, ventLiftM2: OPEN_HOSE_M2 } : ways;
  if (!damage.isSolenoidLineOff) return lost;
  if (isTwoChamber) return { ...lost, feedShutM2: 0, ventShutM2: OPEN_HOSE_M2 };
  return { ...lost, ventLiftM2: Math.max(lost.ventLiftM2, OPEN_HOSE_M2) };
}

/**
 * How fast the pressures in the actuator's two chambers change.
 *
 * Each chamber with its hose is a fixed volume filled and emptied through orifices at one temperature,
 * dp/dt = (R T / V) sum(m).
 *
 * @param solenoid plumbing, areas and line volume
 * @param pressures absolute
 * @param isValveOpen whether the solenoid's valve is open
 * @param damage hoses that are off
 */
export function lineRates(
  solenoid: SolenoidPart,
  pressures: LinePressures,
  isValveOpen: boolean,
  damage: Damage,
): LineRates {
  const ways = brokenWays(waysOf(solenoid, isValveOpen), solenoid, damage);
  const stiffness = (AIR_R * LINE_K) / solenoid.lineM3;
  const into = (feedM2: number, ventM2: number, insidePa: number): number =>
    stiffness *
    (orificeFlow(feedM2, pressures.sourcePa, insidePa, LINE_K) -
      orificeFlow(ventM2, insidePa, pressures.ambientPa, LINE_K));
  return {
    liftPaPerS: into(ways.feedLiftM2, ways.ventLiftM2, pressures.liftPa),
    shutPaPerS: into(ways.feedShutM2, ways.ventShutM2, pressures.shutPa),
  };
}
