import { requireNumber } from '../require-number.js';
import { normalQuantile } from '../numerics/normal-quantile.js';

/** A figure with its relative standard uncertainty, %. */
export interface Uncertain {
  readonly value: number;
  readonly uncertaintyPct: number;
}

/** What an estimate of power from air flow needs. */
export interface PowerInputs {
  readonly airKgPerS: Uncertain;
  readonly airFuelRatio: Uncertain;
  /** Fuel for each kilowatt-hour at the crank, g. About 280 to 340 for a boosted petrol engine at full load. */
  readonly fuelGramsPerKwh: Uncertain;
  /** Level of the band; 0.95 by default. */
  readonly level?: number;
}

/** Estimated power at the crank, with the band that the inputs leave open. */
export interface PowerBand {
  readonly powerKw: number;
  readonly lowKw: number;
  readonly highKw: number;
  readonly level: number;
  /** Relative standard uncertainty of the estimate, %. */
  readonly uncertaintyPct: number;
}

/**
 * Power at the crank that a stream of air can make, as a band: never a single figure, since mixture and
 * fuel economy are seldom known to better than some per cent.
 *
 * @returns kW with low and high at the level asked for (independent inputs, normal in the logarithm)
 * @throws NotFiniteError, OutOfRangeError
 * Source: power = air / (air-fuel ratio · brake specific fuel consumption), Heywood (1988), section 2.7;
 * uncertainties combined by root sum of squares, ISO/IEC Guide 98-3 section 5.1.
 */
export function powerBand(inputs: PowerInputs): PowerBand {
  const name = 'powerBand';
  const { airKgPerS, airFuelRatio, fuelGramsPerKwh, level = 0.95 } = inputs;
  requireNumber(name, 'airKgPerS.value', airKgPerS.value, { min: 0, max: 10 });
  requireNumber(name, 'airFuelRatio.value', airFuelRatio.value, { min: 3, max: 60 });
  requireNumber(name, 'fuelGramsPerKwh.value', fuelGramsPerKwh.value, { min: 150, max: 1000 });
  requireNumber(name, 'level', level, { min: 0, max: 1, exclusive: true });
  const shares = [airKgPerS, airFuelRatio, fuelGramsPerKwh].map(
    ({ uncertaintyPct }) => requireNumber(name, 'uncertaintyPct', uncertaintyPct, { min: 0, max: 50 }) / 100,
  );
  const relative = Math.hypot(...shares);
  const fuelGramsPerHour = (airKgPerS.value / airFuelRatio.value) * 1000 * 3600;
  const powerKw = fuelGramsPerHour / fuelGramsPerKwh.value;
  const reach = Math.exp(normalQuantile(0.5 + level / 2) * relative);
  return { powerKw, lowKw: powerKw / reach, highKw: powerKw * reach, level, uncertaintyPct: relative * 100 };
}
