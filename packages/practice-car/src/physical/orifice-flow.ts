import { AIR_CHOKED } from './gas.js';

/** Below about 1 kPa of difference at 200 kPa the flow turns laminar, so that its slope stays finite. */
const LAMINAR_PA2 = 4e8;

/**
 * Mass flow of air through an opening, positive from `upstreamPa` to `downstreamPa`.
 *
 * The ellipse law m = A c / sqrt(T) * sqrt(p1^2 - p2^2): the nozzle equation's choked flow towards vacuum, and up to a
 * third less than a single smooth nozzle passes near equal pressures, as hoses and bends in a row do; it is the form
 * that ISO 6358 gives a pneumatic part of critical ratio 0. Areas here are effective areas of that form. Near zero
 * difference it is made laminar, as is common practice for simulation.
 *
 * @param areaM2 effective area, at least 0
 * @param upstreamPa absolute pressure before the opening
 * @param downstreamPa absolute pressure behind it
 * @param temperatureK of the gas upstream
 * @returns kg/s, negative when the flow runs back
 */
export function orificeFlow(
  areaM2: number,
  upstreamPa: number,
  downstreamPa: number,
  temperatureK: number,
): number {
  const difference = upstreamPa * upstreamPa - downstreamPa * downstreamPa;
  const softened = Math.sqrt(Math.sqrt(difference * difference + LAMINAR_PA2 * LAMINAR_PA2));
  return ((areaM2 * AIR_CHOKED) / Math.sqrt(temperatureK)) * (difference / softened);
}
