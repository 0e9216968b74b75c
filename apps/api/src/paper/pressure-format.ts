import type { Units } from '@pullbook/contracts';
import type { PressureFormat } from '@pullbook/pictures';
import { formatPressure, PRESSURE_UNITS } from '@pullbook/tuning-math';

/** How pictures write pressures for somebody who reads this unit. */
export function pressureFormat(unit: Units['pressure']): PressureFormat {
  return {
    unit,
    kpaPerUnit: PRESSURE_UNITS[unit].kpaPerUnit,
    write: (kpa) => formatPressure(kpa, unit, { withUnit: false }),
  };
}
