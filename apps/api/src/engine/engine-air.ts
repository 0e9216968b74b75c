import {
  absoluteKpa,
  standardAtmosphere,
  type ChargePathInputs,
  type CompressorMap,
  type InjectorDutyLimit,
} from '@pullbook/tuning-math';
import type { EngineInputs } from './engine-inputs.js';

const ICE_POINT_K = 273.15;

/** The air that an engine breathes. */
export interface EngineAir {
  readonly airC: number;
  readonly barometerAbsKpa: number;
}

/** A car's way of the air, ready for any boost and engine speed. */
export interface EngineWay {
  readonly path: Omit<ChargePathInputs, 'intake' | 'engine'> & {
    readonly intake: Omit<ChargePathInputs['intake'], 'boostKpa'>;
    readonly engine: Omit<ChargePathInputs['engine'], 'engineSpeedRpm'>;
  };
  readonly air: EngineAir;
  readonly revLimitRpm: number;
  readonly airFuelRatio: number;
  readonly fuelGramsPerKwh: number;
  /** Null where the injectors are not described. */
  readonly injectors: InjectorDutyLimit['injectors'] | null;
  readonly highestInjectorDutyPct: number;
}

/** The air on record for a car: its temperature, and the standard atmosphere's pressure at its height. */
export function airOnRecord({ values }: EngineInputs): EngineAir {
  return {
    airC: values.airC ?? 0,
    barometerAbsKpa: standardAtmosphere(values.heightM ?? 0).pressureAbsKpa,
  };
}

/** The way of the air of an engine; null where displacement or rev limit are missing. */
export function engineWay(
  inputs: EngineInputs,
  map: CompressorMap | null,
  air: EngineAir = airOnRecord(inputs),
): EngineWay | null {
  const { displacementL, revLimitRpm } = inputs.values;
  if (displacementL === null || revLimitRpm === null) return null;
  const given = (key: keyof EngineInputs['values']): number => inputs.values[key] ?? NaN;
  const inletK = air.airC + ICE_POINT_K;
  return {
    path: {
      intake: {
        barometerAbsKpa: absoluteKpa(air.barometerAbsKpa),
        filterLossKpa: given('filterLossKpa'),
        coolerLossKpa: given('coolerLossKpa'),
      },
      inletK,
      efficiencyRatio: given('compressorEfficiencyPct') / 100,
      cooler: { coolantK: inletK, effectivenessRatio: given('coolerEffectivenessPct') / 100 },
      engine: {
        displacementLitre: displacementL,
        volumetricEfficiencyRatio: given('volumetricEfficiencyPct') / 100,
      },
      ...(map === null ? {} : { map }),
    },
    air,
    revLimitRpm,
    airFuelRatio: given('airFuelRatio'),
    fuelGramsPerKwh: given('fuelGramsPerKwh'),
    injectors: injectorsOf(inputs),
    highestInjectorDutyPct: given('highestInjectorDutyPct'),
  };
}

function injectorsOf({ values }: EngineInputs): EngineWay['injectors'] {
  const { injectorCount, injectorFlowCm3PerMin, injectorRatedKpa, injectorDifferenceKpa, fuelDensityKgPerL } =
    values;
  if (
    injectorCount === null ||
    injectorFlowCm3PerMin === null ||
    injectorRatedKpa === null ||
    injectorDifferenceKpa === null ||
    fuelDensityKgPerL === null
  ) {
    return null;
  }
  return {
    injectorCount,
    ratedFlowCm3PerMin: injectorFlowCm3PerMin,
    ratedDifferenceKpa: injectorRatedKpa,
    differenceKpa: injectorDifferenceKpa,
    fuelDensityKgPerLitre: fuelDensityKgPerL,
  };
}
