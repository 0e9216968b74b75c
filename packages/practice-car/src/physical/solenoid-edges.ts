import type { SolenoidPart } from './physical-car.js';

export interface ValveEdge {
  readonly timeS: number;
  readonly isOpen: boolean;
}

/** What the coil feels: opening takes longer when the supply sags and when the coil is hot. */
export interface CoilConditions {
  readonly supplyV: number;
  /** Kelvin above the temperature that the dead times hold for. */
  readonly heatedK: number;
}

/** Dead times of a valve as its coil is now. */
export interface ValveTiming {
  readonly openS: number;
  readonly closeS: number;
}

export interface Solenoid {
  /** The valve's openings and closings within the period that starts at `startS`, in time order. */
  readonly edgesOf: (startS: number, dutyPct: number, timing: ValveTiming) => readonly ValveEdge[];
}

/** Supply at which dead times are quoted. */
const RATED_V = 13.8;

/** Dead time as it builds up with how long the coil was on (or off) beyond the least that moves the valve. */
const builtUp = (deadS: number, beyondS: number, scaleS: number): number =>
  deadS * (1 - Math.exp(-Math.max(0, beyondS) / scaleS));

/**
 * Dead times at a supply and heat: current rises more slowly in a hot coil and on a weak supply.
 *
 * @param part the solenoid
 * @param coil what it feels; supply above 0 V
 */
export function valveTiming(part: SolenoidPart, coil: CoilConditions): ValveTiming {
  return {
    openS: (part.openS * (1 + part.heatPerK * coil.heatedK) * RATED_V) / coil.supplyV,
    closeS: part.closeS,
  };
}

/**
 * A pulsed solenoid: turns duty into the moments at which its valve opens and shuts.
 *
 * The coil is energised for duty/100 of each period. The valve opens `openS` after current on and shuts `closeS`
 * after current off. A pulse shorter than `openS` never opens it (dead zone), a pause shorter than `closeS`
 * never shuts it (saturation); just beyond either the opposite dead time builds up from nothing, so that the open
 * share of time has no jump. It remembers what falls into the next period.
 *
 * @param periodS length of one period
 * Source: common practice for pulsed solenoid valves (dead time and ballistic range), no single source.
 */
export function pulseSolenoid(periodS: number): Solenoid {
  let queue: ValveEdge[] = [];
  let offSinceS = -Infinity;
  let isEnergised = false;
  const switchOn = (startS: number, onS: number, timing: ValveTiming): void => {
    const pauseS = startS - offSinceS;
    if (pauseS <= timing.closeS) {
      queue = queue.filter((edge) => edge.isOpen || edge.timeS < startS);
      return;
    }
    if (onS < timing.openS) return;
    const opensAtS = startS + builtUp(timing.openS, pauseS - timing.closeS, timing.closeS);
    queue = queue.filter((edge) => edge.timeS < opensAtS);
    queue.push({ timeS: opensAtS, isOpen: true });
  };
  const switchOff = (offS: number, onS: number, timing: ValveTiming): void => {
    offSinceS = offS;
    queue = queue.filter((edge) => !edge.isOpen || edge.timeS < offS);
    queue.push({ timeS: offS + builtUp(timing.closeS, onS - timing.openS, timing.openS), isOpen: false });
  };
  return {
    edgesOf: (startS, dutyPct, timing) => {
      const onS = (Math.min(100, Math.max(0, dutyPct)) / 100) * periodS;
      if (onS > 0 && !isEnergised) switchOn(startS, onS, timing);
      if (onS === 0 && isEnergised) switchOff(startS, Infinity, timing);
      const staysOn = onS >= periodS;
      if (onS > 0 && !staysOn) switchOff(startS + onS, isEnergised ? Infinity : onS, timing);
      isEnergised = staysOn;
      const due = queue.filter((edge) => edge.timeS < startS + periodS);
      queue = queue.filter((edge) => edge.timeS >= startS + periodS);
      return due.sort((first, second) => first.timeS - second.timeS);
    },
  };
}
