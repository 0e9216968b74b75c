import type { PersonsUnits } from '../../../../components/units/use-units';

/** The range that closes a reason: on the visit it stands beside, in figures of its own. */
const closingRange = / Expect -?[\d.]+ to -?[\d.]+ kPa\.$/;

/** Why this duty, in the person's unit, without what the figures beside it say already. */
export const sayWhy = (text: string, units: PersonsUnits): string =>
  units.say(text.replace(closingRange, ''));
