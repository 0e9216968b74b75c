/** What faults have broken that is not a figure of a car part. */
export interface Damage {
  /** Hole in the charge pipe. */
  readonly leakM2: number;
  /** Hose between solenoid and actuator has come off: nothing lifts the diaphragm. */
  readonly isActuatorLineOff: boolean;
  /** The solenoid's own hose has come off. */
  readonly isSolenoidLineOff: boolean;
  /** The coil has no current. */
  readonly isSolenoidDead: boolean;
}

export const NO_DAMAGE: Damage = {
  leakM2: 0,
  isActuatorLineOff: false,
  isSolenoidLineOff: false,
  isSolenoidDead: false,
};
