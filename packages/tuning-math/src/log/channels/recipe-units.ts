import type { ChannelQuantity } from '../channel-quantities.js';
import type { PrintedUnit } from './unit-words.js';
import { unitOfText } from './unit-words.js';

const PRESSURE = ['kPa', 'bar', 'psi', 'mbar', 'hPa', 'Pa', 'atm', 'kgfPerCm2', 'inHg', 'mmHg'] as const;
const TEMPERATURE = ['C', 'F', 'K'] as const;
const SPEED = ['kmh', 'mph', 'mPerS'] as const;
const POSITION = ['pct', 'fraction', 'V', 'mV'] as const;

/** Units that a person may say a column is in, the usual one first; by what the column holds. */
export const RECIPE_UNITS: Readonly<Record<ChannelQuantity, readonly string[]>> = {
  time: ['s', 'ms', 'us', 'min', 'day', 'h:min:s'],
  'boost-pressure': PRESSURE,
  'manifold-absolute-pressure': PRESSURE,
  'barometric-pressure': PRESSURE,
  'target-boost-pressure': PRESSURE,
  'engine-speed': ['rpm', 'krpm', 'rps', 'radPerS'],
  'vehicle-speed': SPEED,
  'undriven-wheel-speed': SPEED,
  throttle: POSITION,
  pedal: POSITION,
  gear: ['gear'],
  'intake-temperature': TEMPERATURE,
  'ambient-temperature': TEMPERATURE,
  'coolant-temperature': TEMPERATURE,
  'oil-temperature': TEMPERATURE,
  'exhaust-temperature': TEMPERATURE,
  lambda: ['lambda', 'afr'],
  'knock-retard': ['deg'],
  'knock-count': ['count'],
  'ignition-advance': ['deg'],
  'solenoid-duty': ['pct', 'fraction'],
  acceleration: ['mPerS2', 'g'],
  altitude: ['m', 'ft'],
  marker: ['none'],
  unknown: ['none'],
};

/**
 * The unit that a recipe names for a quantity: by our name for it, else as people write it (`%`, `km/h`);
 * null for one that the quantity cannot have.
 *
 * @example recipeUnit('throttle', '%') // { unit: 'pct', … }
 */
export function recipeUnit(quantity: ChannelQuantity, text: string): PrintedUnit | null {
  const allowed = RECIPE_UNITS[quantity];
  const unit = allowed.includes(text) ? text : unitOfText(text)?.unit;
  if (unit === undefined || !allowed.includes(unit)) return null;
  return { unit, dimension: allowed === PRESSURE ? 'pressure' : 'number', reference: null };
}
