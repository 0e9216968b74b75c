import { noAirAndFuel, type AirAndFuel, type Mechanics } from '@pullbook/contracts';

/** What the workshop of the scenario has found out of an engine. */
export type DemoEngine = Pick<Mechanics, 'displacementL' | 'revLimitRpm' | 'airAndFuel'>;

const measured: AirAndFuel = {
  volumetricEfficiencyPct: 93,
  compressorEfficiencyPct: 73,
  coolerEffectivenessPct: 75,
  filterLossKpa: 3,
  coolerLossKpa: 3,
  airFuelRatio: 12,
  fuelDensityKgPerL: 0.745,
  fuelGramsPerKwh: 315,
  injectorCount: 4,
  injectorFlowCm3PerMin: 420,
  injectorRatedKpa: 300,
  injectorDifferenceKpa: 300,
  highestInjectorDutyPct: 85,
  surgeMarginPct: 5,
  chokeMarginPct: 5,
  airC: -5,
  heightM: 120,
};

/** Engines of the scenario: one that is known throughout, one of which only the injectors are. All invented. */
export const demoEngines = {
  measured: { displacementL: 1.8, revLimitRpm: 6500, airAndFuel: measured },
  injectorsKnown: {
    displacementL: 2,
    revLimitRpm: 6400,
    airAndFuel: {
      ...noAirAndFuel,
      injectorCount: 4,
      injectorFlowCm3PerMin: 550,
      injectorRatedKpa: 300,
      injectorDifferenceKpa: 350,
      coolerEffectivenessPct: 65,
    },
  },
} as const satisfies Record<string, DemoEngine>;
