import type { FaultCode } from '@pullbook/tuning-math';

// All of it common practice, no source: a peak out of hand is looked for where boost is held down, a lost one along the
// way of the charge air and of what keeps the gate shut.
const boostLines =
  'Hoses from the boost source to the solenoid and on to the actuator: on, clamped, not split, kinked or pinched';
const gate = 'Actuator and gate: move freely over their whole way and come back, the rod sits on its lever';
const solenoid =
  'Solenoid: plugged in, clicks when it is energised, closes when it is not, its vent is clear';
const gauge = 'Gauge and sensor line: on, dry, reads zero with the engine off';
const driven = 'The controller held the preset and the settings that are written here';
const cut = 'Over-boost cut: set, and known to work';

const looks: Readonly<Record<FaultCode, readonly string[]>> = {
  'peak-soared': [boostLines, gate, solenoid, driven, gauge, cut],
  'ceiling-passed-again': [
    gate,
    boostLines,
    solenoid,
    driven,
    'Gear, road and throttle were alike in all these pulls, and the wheels did not slip',
    gauge,
    cut,
  ],
  'response-lost': [
    'Charge air from compressor to throttle: hoses, clamps and cooler hold pressure, the dump valve shuts',
    'Gate: shuts fully, neither burnt nor cracked, the rod still has its preload',
    boostLines,
    solenoid,
    'Exhaust before the turbine is tight, air filter and catalyst are free, the shaft turns easily',
    'The throttle was full open, the wheels did not slip, and the engine’s own control did not cut in',
    gauge,
  ],
};

/** What to look at on the car before it is called sound. */
export const whatToLookAt = (code: FaultCode): readonly string[] => looks[code];
