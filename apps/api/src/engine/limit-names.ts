import type { CarLimits, CeilingCause } from '@pullbook/contracts';

/** What the limits of a ceiling are called. */
export const limitNames: Readonly<Record<CeilingCause, string>> = {
  'over-boost-cut': 'over-boost cut',
  'sensor-full-scale': "sensor's full scale",
  actuator: "actuator's limit",
  turbo: "turbo's limit",
  engine: "engine's limit",
  injectors: "injectors' limit",
  'compressor-map': "compressor map's edge",
};

/** Which limit each field of a car's limits is, in the order of the record. */
export const causeOfLimit: Readonly<Record<keyof CarLimits, CeilingCause>> = {
  overBoostCutKpa: 'over-boost-cut',
  sensorFullScaleKpa: 'sensor-full-scale',
  actuatorKpa: 'actuator',
  turboKpa: 'turbo',
  engineKpa: 'engine',
};
