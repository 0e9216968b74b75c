import type { Units } from '@pullbook/contracts';
import type { PressureFormat } from '@pullbook/pictures';
import { formatPressure, PRESSURE_UNITS } from '@pullbook/tuning-math';

/** How papers write pressures for somebody who reads this unit. */
export interface PaperFormat extends PressureFormat {
  readonly unit: Units['pressure'];
  /** A measured peak, with the digit by which pulls differ: 124.6 kPa, 1.25 bar, 18.1 psi. */
  readonly writePeak: (kpa: number) => string;
}

const PEAK_DIGITS: Readonly<Record<Units['pressure'], number>> = { kPa: 1, bar: 2, psi: 1 };

export function pressureFormat(unit: Units['pressure']): PaperFormat {
  return {
    unit,
    kpaPerUnit: PRESSURE_UNITS[unit].kpaPerUnit,
    write: (kpa) => formatPressure(kpa, unit, { withUnit: false }),
    writePeak: (kpa) => formatPressure(kpa, unit, { withUnit: false, fractionDigits: PEAK_DIGITS[unit] }),
  };
}
