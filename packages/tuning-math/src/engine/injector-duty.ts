import { requireNumber } from '../require-number.js';

/** Injectors and the fuel that they have to deliver. */
export interface InjectorLoad {
  /** Fuel for the whole engine, kg/s: air mass flow over air-fuel ratio. */
  readonly fuelKgPerS: number;
  readonly injectorCount: number;
  /** Flow of one injector held open, cm³/min, at the rated pressure difference. */
  readonly ratedFlowCm3PerMin: number;
  /** Pressure difference at which the flow is rated, kPa. */
  readonly ratedDifferenceKpa: number;
  /** Pressure difference across the injector in this pull, kPa: rail less manifold. */
  readonly differenceKpa: number;
  /** kg/L; about 0.745 for petrol. */
  readonly fuelDensityKgPerLitre: number;
}

/**
 * Share of each cycle that the injectors have to stay open. Flow goes with the square root of the pressure
 * difference, so a rail that does not follow boost loses flow just when it is needed.
 *
 * @returns % of time; over 100 means that the fuel cannot be delivered
 * @throws NotFiniteError, OutOfRangeError
 * Source: orifice equation (flow goes with the root of the pressure difference); opening time left out.
 */
export function injectorDuty(load: InjectorLoad): number {
  const name = 'injectorDuty';
  requireNumber(name, 'fuelKgPerS', load.fuelKgPerS, { min: 0, max: 1 });
  requireNumber(name, 'injectorCount', load.injectorCount, { min: 1, max: 32, integer: true });
  requireNumber(name, 'ratedFlowCm3PerMin', load.ratedFlowCm3PerMin, { min: 10, max: 10_000 });
  requireNumber(name, 'ratedDifferenceKpa', load.ratedDifferenceKpa, { min: 10, max: 50_000 });
  requireNumber(name, 'differenceKpa', load.differenceKpa, { min: 10, max: 50_000 });
  requireNumber(name, 'fuelDensityKgPerLitre', load.fuelDensityKgPerLitre, { min: 0.5, max: 1.2 });
  return (100 * load.fuelKgPerS) / injectorCapacity(load);
}

/** Fuel that the injectors deliver when held open, kg/s. */
export function injectorCapacity(injectors: Omit<InjectorLoad, 'fuelKgPerS'>): number {
  const pressureFactor = Math.sqrt(injectors.differenceKpa / injectors.ratedDifferenceKpa);
  const litrePerS = (injectors.ratedFlowCm3PerMin / 1000 / 60) * pressureFactor;
  return injectors.injectorCount * litrePerS * injectors.fuelDensityKgPerLitre;
}
