import type { AirAndFuel } from '@pullbook/contracts';

/** One field of the engine's form. */
export interface EngineField {
  readonly key: keyof AirAndFuel | 'displacementL' | 'revLimitRpm';
  readonly label: string;
  /** `kpa` and `celsius` are typed in the person's units. */
  readonly kind: 'number' | 'kpa' | 'celsius';
  readonly unit?: string;
  readonly hint?: string;
}

interface FieldGroup {
  readonly name: string;
  readonly fields: readonly EngineField[];
}

/** What is asked of an engine, in the order in which one finds it out. */
export const engineFields: readonly FieldGroup[] = [
  {
    name: 'Engine and air',
    fields: [
      { key: 'displacementL', label: 'Displacement', kind: 'number', unit: 'L' },
      { key: 'revLimitRpm', label: 'Rev limit', kind: 'number', unit: 'r/min' },
      {
        key: 'volumetricEfficiencyPct',
        label: 'Volumetric efficiency',
        kind: 'number',
        unit: '%',
        hint: 'Air taken in over displacement, at the rev limit.',
      },
      { key: 'filterLossKpa', label: 'Lost in the air filter', kind: 'kpa' },
      {
        key: 'compressorEfficiencyPct',
        label: 'Compressor efficiency',
        kind: 'number',
        unit: '%',
        hint: 'Used where no map tells it.',
      },
      {
        key: 'coolerEffectivenessPct',
        label: 'Charge cooler effectiveness',
        kind: 'number',
        unit: '%',
        hint: '0 without a cooler.',
      },
      { key: 'coolerLossKpa', label: 'Lost in the charge cooler', kind: 'kpa' },
    ],
  },
  {
    name: 'Fuel and injectors',
    fields: [
      { key: 'airFuelRatio', label: 'Air-fuel ratio at full load', kind: 'number', hint: 'By mass.' },
      { key: 'injectorCount', label: 'Injectors', kind: 'number' },
      { key: 'injectorFlowCm3PerMin', label: 'Flow of one, held open', kind: 'number', unit: 'cm³/min' },
      {
        key: 'injectorRatedKpa',
        label: 'Rated at',
        kind: 'kpa',
        hint: 'The pressure difference at which that flow was measured.',
      },
      {
        key: 'injectorDifferenceKpa',
        label: 'Across the injectors at full load',
        kind: 'kpa',
        hint: 'Rail less manifold. Where the rail does not follow boost: rail less the highest boost.',
      },
      { key: 'highestInjectorDutyPct', label: 'Highest injector duty', kind: 'number', unit: '%' },
      { key: 'fuelDensityKgPerL', label: 'Fuel density', kind: 'number', unit: 'kg/L' },
      {
        key: 'fuelGramsPerKwh',
        label: 'Fuel for each kilowatt-hour',
        kind: 'number',
        unit: 'g/kWh',
        hint: 'At the crank at full load; 280 to 340 is usual for boosted petrol engines.',
      },
    ],
  },
  {
    name: 'Air to reckon with, and distances to keep',
    fields: [
      {
        key: 'airC',
        label: 'Air temperature',
        kind: 'celsius',
        hint: 'The coldest day asks most of the injectors.',
      },
      {
        key: 'heightM',
        label: 'Height',
        kind: 'number',
        unit: 'm',
        hint: 'The lowest place that it is driven at.',
      },
      { key: 'surgeMarginPct', label: 'Distance from surge', kind: 'number', unit: '%' },
      { key: 'chokeMarginPct', label: 'Distance from choke', kind: 'number', unit: '%' },
    ],
  },
];
