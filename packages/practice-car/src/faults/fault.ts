/** Everything that can be wrong with a practice car, its sensors or its driver. */
export const FAULT_KINDS = [
  'leak',
  'actuator-line-off',
  'solenoid-line-off',
  'sticking-gate',
  'boost-creep',
  'wheel-slip',
  'weak-spring',
  'lazy-solenoid',
  'dead-solenoid',
  'sensor-full-scale',
  'throttle-lift',
  'knock',
  'lean',
] as const;

export type FaultKind = (typeof FAULT_KINDS)[number];

export interface Fault {
  readonly kind: FaultKind;
  /** 0 = hardly there, 1 = as bad as it gets. */
  readonly severityRatio: number;
  /** Moment in the run from which on it is there; 0 = from the first. */
  readonly fromS: number;
}

/**
 * A fault as bad as it usually is, there from the first.
 *
 * @example faultOf('leak').severityRatio // 0.6
 */
export function faultOf(kind: FaultKind, severityRatio = 0.6, fromS = 0): Fault {
  return { kind, severityRatio, fromS };
}
