import type { AirAndFuel, EngineInput, Mechanics } from '@pullbook/contracts';

/** What an engine sheet rests on, by name of the field in the car's mechanics. */
export type EngineKey = keyof AirAndFuel | 'displacementL' | 'revLimitRpm';

interface InputFact {
  readonly name: string;
  readonly unit: string;
  /** Used until somebody enters what this engine has; null: nothing can stand in for it. */
  readonly assumed: number | null;
  /** A distance that a workshop keeps, not a property of the engine: nothing is guessed by using it. */
  readonly isPractice?: true;
}

/** Assumed values are those of a boosted petrol engine in fair order. Common practice, no source. */
export const engineFacts: Readonly<Record<EngineKey, InputFact>> = {
  displacementL: { name: 'displacement', unit: 'L', assumed: null },
  revLimitRpm: { name: 'rev limit', unit: 'r/min', assumed: null },
  volumetricEfficiencyPct: { name: 'volumetric efficiency', unit: '%', assumed: 95 },
  compressorEfficiencyPct: { name: 'compressor efficiency', unit: '%', assumed: 70 },
  coolerEffectivenessPct: { name: 'charge cooler effectiveness', unit: '%', assumed: 70 },
  filterLossKpa: { name: 'pressure lost in the filter', unit: 'kPa', assumed: 2 },
  coolerLossKpa: { name: 'pressure lost in the charge cooler', unit: 'kPa', assumed: 5 },
  airFuelRatio: { name: 'air-fuel ratio at full load', unit: '', assumed: 12 },
  fuelDensityKgPerL: { name: 'fuel density', unit: 'kg/L', assumed: 0.745 },
  fuelGramsPerKwh: { name: 'fuel for each kilowatt-hour', unit: 'g/kWh', assumed: 310 },
  injectorCount: { name: 'number of injectors', unit: '', assumed: null },
  injectorFlowCm3PerMin: { name: 'flow of one injector', unit: 'cm³/min', assumed: null },
  injectorRatedKpa: { name: 'pressure at which that flow is rated', unit: 'kPa', assumed: null },
  injectorDifferenceKpa: { name: 'pressure across the injectors at full load', unit: 'kPa', assumed: null },
  highestInjectorDutyPct: { name: 'highest injector duty', unit: '%', assumed: 85, isPractice: true },
  surgeMarginPct: { name: 'distance to keep from surge', unit: '%', assumed: 5, isPractice: true },
  chokeMarginPct: { name: 'distance to keep from choke', unit: '%', assumed: 5, isPractice: true },
  airC: { name: 'air temperature to reckon with', unit: '°C', assumed: 20 },
  heightM: { name: 'height to reckon with', unit: 'm', assumed: 0 },
};

/** What is known of an engine, with what stands in for the rest. */
export interface EngineInputs {
  /** Entered or assumed; null where neither is. */
  readonly values: Readonly<Record<EngineKey, number | null>>;
  readonly list: readonly EngineInput[];
}

/** Reads what a car's mechanics tell of its engine. */
export function readEngineInputs(mechanics: Mechanics): EngineInputs {
  const entered: Readonly<Record<EngineKey, number | null>> = {
    ...mechanics.airAndFuel,
    displacementL: mechanics.displacementL,
    revLimitRpm: mechanics.revLimitRpm,
  };
  const keys = Object.keys(engineFacts) as EngineKey[];
  const list = keys.map((key): EngineInput => {
    const { name, unit, assumed } = engineFacts[key];
    const value = entered[key] ?? assumed;
    const basis = entered[key] !== null ? 'entered' : assumed === null ? 'missing' : 'assumed';
    return { key, name, value, unit, basis };
  });
  const values = Object.fromEntries(list.map(({ key, value }) => [key, value])) as EngineInputs['values'];
  return { values, list };
}

/** Names of those of the keys that nobody entered and nothing stands in for. */
export function missingOf({ list }: EngineInputs, keys: readonly EngineKey[]): string[] {
  return namesWith(list, keys, 'missing');
}

/** Names of those of the keys that are assumed, but for the distances that a workshop keeps. */
export function assumedOf({ list }: EngineInputs, keys: readonly EngineKey[]): string[] {
  return namesWith(
    list,
    keys.filter((key) => engineFacts[key].isPractice !== true),
    'assumed',
  );
}

function namesWith(
  list: EngineInputs['list'],
  keys: readonly EngineKey[],
  basis: EngineInput['basis'],
): string[] {
  const wanted: readonly string[] = keys;
  return list.filter((one) => one.basis === basis && wanted.includes(one.key)).map(({ name }) => name);
}
