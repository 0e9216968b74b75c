'use client';

import type { PressureFormat } from '@pullbook/pictures';
import { PRESSURE_UNITS } from '@pullbook/tuning-math';
import { useMemo } from 'react';
import { useUnits } from '../units/use-units';

/** How pictures write pressures for the signed-in person. */
export function usePressureFormat(): PressureFormat {
  const { pressure, temperature, figure } = useUnits();
  return useMemo(
    () => ({ unit: pressure, kpaPerUnit: PRESSURE_UNITS[pressure].kpaPerUnit, write: figure }),
    // `figure` is made anew at each render and depends on nothing but these two.
    [pressure, temperature],
  );
}
