import type { ChannelQuantity } from '@pullbook/tuning-math';

/** What people call each quantity on the log screen. */
const NAMES: Readonly<Record<Exclude<ChannelQuantity, 'unknown' | 'time'>, string>> = {
  'boost-pressure': 'Boost',
  'manifold-absolute-pressure': 'Manifold, absolute',
  'barometric-pressure': 'Air pressure',
  'target-boost-pressure': 'Target boost',
  'engine-speed': 'Engine speed',
  'vehicle-speed': 'Road speed',
  'undriven-wheel-speed': 'Undriven wheels',
  throttle: 'Throttle',
  pedal: 'Pedal',
  gear: 'Gear',
  'intake-temperature': 'Intake temperature',
  'ambient-temperature': 'Air temperature',
  'coolant-temperature': 'Coolant',
  'oil-temperature': 'Oil temperature',
  'exhaust-temperature': 'Exhaust temperature',
  lambda: 'Lambda',
  'knock-retard': 'Knock retard',
  'knock-count': 'Knock count',
  'ignition-advance': 'Ignition advance',
  'solenoid-duty': 'Duty',
  acceleration: 'Acceleration',
  altitude: 'Altitude',
  marker: 'Marker',
};

/** Name of a logged channel: that of its quantity, or its head in the file where nobody knows what it is. */
export function channelName(quantity: ChannelQuantity, header: string): string {
  if (quantity === 'unknown' || quantity === 'time') return header.trim() || 'Column without a head';
  return NAMES[quantity];
}
