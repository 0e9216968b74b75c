import * as z from 'zod';

/** What the way of the air and of the fuel through this engine is like; null where nobody measured or looked it up. */
export const AirAndFuel = z
  .object({
    /** Air taken in over displacement at manifold conditions, at the rev limit. */
    volumetricEfficiencyPct: z.number().min(10).max(150).nullable(),
    /** Isentropic; used where no map of the compressor tells it. */
    compressorEfficiencyPct: z.number().min(20).max(90).nullable(),
    /** Share of the possible cooling that the charge cooler does; 0 for none. */
    coolerEffectivenessPct: z.number().min(0).max(100).nullable(),
    filterLossKpa: z.number().min(0).max(20).nullable(),
    coolerLossKpa: z.number().min(0).max(100).nullable(),
    /** Mass of air to a mass of fuel at full load. */
    airFuelRatio: z.number().min(3).max(60).nullable(),
    fuelDensityKgPerL: z.number().min(0.5).max(1.2).nullable(),
    /** Fuel for each kilowatt-hour at the crank at full load. */
    fuelGramsPerKwh: z.number().min(150).max(1000).nullable(),
    injectorCount: z.number().int().min(1).max(32).nullable(),
    /** Flow of one injector held open, at its rated pressure difference. */
    injectorFlowCm3PerMin: z.number().min(10).max(10_000).nullable(),
    injectorRatedKpa: z.number().min(10).max(50_000).nullable(),
    /** Pressure difference across the injectors at full load: rail less manifold. */
    injectorDifferenceKpa: z.number().min(10).max(50_000).nullable(),
    highestInjectorDutyPct: z.number().min(1).max(100).nullable(),
    /** Distances to keep on the compressor map. */
    surgeMarginPct: z.number().min(0).max(100).nullable(),
    chokeMarginPct: z.number().min(0).max(50).nullable(),
    /** The air to reckon with: coldest day and lowest place ask most of injectors and compressor's choke side. */
    airC: z.number().min(-40).max(60).nullable(),
    heightM: z.number().min(-400).max(4500).nullable(),
  })
  .meta({ id: 'AirAndFuel' });
export type AirAndFuel = z.infer<typeof AirAndFuel>;

export const noAirAndFuel: AirAndFuel = {
  volumetricEfficiencyPct: null,
  compressorEfficiencyPct: null,
  coolerEffectivenessPct: null,
  filterLossKpa: null,
  coolerLossKpa: null,
  airFuelRatio: null,
  fuelDensityKgPerL: null,
  fuelGramsPerKwh: null,
  injectorCount: null,
  injectorFlowCm3PerMin: null,
  injectorRatedKpa: null,
  injectorDifferenceKpa: null,
  highestInjectorDutyPct: null,
  surgeMarginPct: null,
  chokeMarginPct: null,
  airC: null,
  heightM: null,
};
