import type { Air, AirRequest } from '@pullbook/contracts';
import {
  barometerAtAltitude,
  dryAirPressure,
  expectedIdleVacuum,
  moistAirDensity,
  powerCorrection,
  type CorrectionStandard,
} from '@pullbook/tuning-math';
import { DomainError } from '../plumbing/domain-error.js';

const standards: readonly CorrectionStandard[] = [
  'sae-j1349-1990',
  'sae-j1349-2004',
  'iso-1585-spark',
  'din-70020',
];

/**
 * What the air of a place means for an engine: pressure, dry pressure, density, the idle vacuum to expect, and the
 * published power corrections with what lies outside their ranges.
 *
 * @throws DomainError invalid-request where neither the barometer nor the sea-level pressure is given; ArgumentError
 */
export function describeAir(request: AirRequest): Air {
  const { temperatureC, humidityPct, altitudeM } = request;
  const barometerAbsKpa = barometerOf(request);
  const reading = { barometerAbsKpa, temperatureC, humidityPct };
  const dryAbsKpa = dryAirPressure(reading);
  const density = moistAirDensity(reading);
  const vacuum = expectedIdleVacuum(altitudeM);
  return {
    barometerAbsKpa,
    dryAbsKpa,
    densityKgPerM3: density.densityKgPerM3,
    densityWithinPublishedRange: density.withinPublishedRange,
    idleVacuumHintKpa: { low: vacuum.lowKpa, high: vacuum.highKpa },
    corrections: standards.map((standard) => {
      const inletAbsKpa = standard === 'din-70020' ? barometerAbsKpa : dryAbsKpa;
      const { factor, valid, flags } = powerCorrection({ inletAbsKpa, inletC: temperatureC }, standard);
      return { standard, factor, valid, flags: [...flags] };
    }),
  };
}

function barometerOf({ barometerAbsKpa, seaLevelAbsKpa, altitudeM }: AirRequest): number {
  if (barometerAbsKpa !== null) return barometerAbsKpa;
  if (seaLevelAbsKpa !== null) return barometerAtAltitude({ seaLevelAbsKpa, altitudeM });
  const message = "give what the barometer reads, or the weather report's sea-level pressure and the height";
  throw new DomainError('invalid-request', message, { errors: [{ field: 'barometerAbsKpa', message }] });
}
