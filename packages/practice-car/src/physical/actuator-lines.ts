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

/** Which openings join the actuator's two chambers to the source and to the open air. */
export interface LineWays {
  readonly lift: ChamberWays;
  readonly shut: ChamberWays;
}

interface ChamberWays {
  readonly feedM2: number;
  readonly ventM2: number;
}

const CLOSED: ChamberWays = { feedM2: 0, ventM2: 0 };

function soundWays(solenoid: SolenoidPart, isValveOpen: boolean): LineWays {
  const { restrictorM2, valveM2, plumbing } = solenoid;
  if (plumbing === 'bleed')
    return { lift: { feedM2: restrictorM2, ventM2: isValveOpen ? valveM2 : 0 }, shut: CLOSED };
  if (plumbing === 'interrupt') {
    const lift = isValveOpen ? { feedM2: 0, ventM2: valveM2 } : { feedM2: restrictorM2, ventM2: 0 };
    return { lift, shut: CLOSED };
  }
  const shut = isValveOpen ? { feedM2: valveM2, ventM2: 0 } : { feedM2: 0, ventM2: valveM2 };
  return { lift: { feedM2: restrictorM2, ventM2: 0 }, shut };
}

/** A hose that is off empties its chamber: in a two-chamber actuator the solenoid's hose feeds the far side. */
function brokenWays(ways: LineWays, solenoid: SolenoidPart, damage: Damage): LineWays {
  const open: ChamberWays = { feedM2: 0, ventM2: OPEN_HOSE_M2 };
  const lift = damage.isActuatorLineOff ? open : ways.lift;
  if (!damage.isSolenoidLineOff) return { ...ways, lift };
  if (solenoid.plumbing === 'two-chamber') return { lift, shut: open };
  if (solenoid.plumbing === 'interrupt') return { lift: open, shut: ways.shut };
  return { lift: { feedM2: lift.feedM2, ventM2: Math.max(lift.ventM2, OPEN_HOSE_M2) }, shut: ways.shut };
}

/**
 * The openings that join the actuator's chambers to pressure and to the open air, for a state of the valve.
 *
 * Changes only when the valve moves or a hose comes off, so it is worked out there and not at every step.
 *
 * @param solenoid plumbing and areas
 * @param isValveOpen whether the solenoid's valve is open
 * @param damage hoses that are off
 */
export function lineWays(solenoid: SolenoidPart, isValveOpen: boolean, damage: Damage): LineWays {
  return brokenWays(soundWays(solenoid, isValveOpen), solenoid, damage);
}

/** Rate of pressure in one chamber with its hose, through the openings to source and open air. */
function chamberRate(
  pressures: LinePressures,
  insidePa: number,
  areas: { readonly feedM2: number; readonly ventM2: number },
): number {
  return (
    orificeFlow(areas.feedM2, pressures.sourcePa, insidePa, LINE_K) -
    orificeFlow(areas.ventM2, insidePa, pressures.ambientPa, LINE_K)
  );
}

/**
 * How fast the pressures in the actuator's two chambers change.
 *
 * Each chamber with its hose is a fixed volume filled and emptied through orifices at one temperature,
 * dp/dt = (R T / V) sum(m).
 *
 * @param lineM3 volume of a chamber with its hose
 * @param ways openings, from `lineWays`
 * @param pressures absolute
 */
export function lineRates(lineM3: number, ways: LineWays, pressures: LinePressures): LineRates {
  const stiffness = (AIR_R * LINE_K) / lineM3;
  return {
    liftPaPerS: stiffness * chamberRate(pressures, pressures.liftPa, ways.lift),
    shutPaPerS: stiffness * chamberRate(pressures, pressures.shutPa, ways.shut),
  };
}
