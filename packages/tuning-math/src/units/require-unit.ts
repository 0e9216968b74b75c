import { UnknownUnitError } from '../errors.js';

/** Refuses a unit that is no key of the table. @throws UnknownUnitError naming the choices */
export function requireUnit(functionName: string, argument: string, unit: string, table: object): void {
  if (Object.hasOwn(table, unit)) return;
  const allowed = `to be one of ${Object.keys(table).join(', ')}`;
  throw new UnknownUnitError(functionName, { argument, value: unit, allowed });
}
