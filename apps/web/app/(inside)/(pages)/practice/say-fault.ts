import type { PracticeFaultName } from '@pullbook/practice-car';

const names: Readonly<Record<PracticeFaultName, string>> = {
  leak: 'a leak in the charge pipe',
  'actuator-line-off': 'the hose came off the actuator',
  'solenoid-line-off': 'the hose came off the solenoid',
  'sticking-gate': 'the gate stuck',
  'boost-creep': 'the gate could not pass enough gas',
  'wheel-slip': 'the wheels slipped',
  'weak-spring': 'the actuator spring lost its force',
  'lazy-solenoid': 'the solenoid opened late',
  'dead-solenoid': 'the solenoid lost its current',
  'sensor-full-scale': 'the sensor was at the end of its range',
  'throttle-lift': 'the driver lifted',
  knock: 'the engine knocked',
  lean: 'the mixture was lean',
  soaring: 'nothing held boost down any more',
  falling: 'boost was lost',
};

/** A fault of a practice car, as one would tell it. */
export const sayFault = (name: PracticeFaultName): string => names[name];
