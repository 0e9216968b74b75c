import { AIR_CP, AIR_EXPONENT } from './gas.js';
import { compressorPoint } from './compressor.js';
import type { PhysicalCar } from './physical-car.js';

/** Reference air of the map: 298 K and 100 kPa. */
const INLET = { pressurePa: 100_000, temperatureK: 298 };
/** Tip speeds of the lines, m/s. */
const TIP_SPEEDS_MPS = [180, 240, 300, 350, 400, 440, 480];
/** Points of a line, as shares of its flow at no resistance: the model itself has no surge line, so the first is taken for it. */
const FLOW_SHARES = [0.42, 0.52, 0.62, 0.72, 0.82, 0.9];
const HALVINGS = 60;

/**
 * The map of a practice car's compressor as a workshop would enter it: columns speed (r/min), flow (kg/s), pressure ratio,
 * efficiency (%), in air of 298 K and 100 kPa.
 *
 * @returns CSV text with a header line, slowest line first
 */
export function compressorMapCsv({ compressor }: PhysicalCar): string {
  const rows = TIP_SPEEDS_MPS.flatMap((tipMps) => {
    const shaftRadPerS = (2 * tipMps) / compressor.wheelM;
    const speedRpm = Math.round((shaftRadPerS * 60) / (2 * Math.PI) / 1000) * 1000;
    const at = (ratio: number) =>
      compressorPoint(compressor, INLET, ratio * INLET.pressurePa, (speedRpm * Math.PI) / 30);
    const mostFlow = at(1).flowKgPerS;
    // Twice the ideal pressure ratio of the tip speed is past anything that the line reaches.
    const highest = 2 * (1 + tipMps ** 2 / (AIR_CP * INLET.temperatureK)) ** (1 / AIR_EXPONENT);
    return FLOW_SHARES.map((share) => {
      const ratio = ratioWhere((one) => at(one).flowKgPerS - share * mostFlow, highest);
      const { flowKgPerS, efficiencyRatio } = at(ratio);
      return [speedRpm, flowKgPerS.toFixed(4), ratio.toFixed(3), (efficiencyRatio * 100).toFixed(1)].join(
        ',',
      );
    });
  });
  return `speed,flow,pressure ratio,efficiency\n${rows.join('\n')}\n`;
}

/** Where a falling function of the pressure ratio crosses zero, by halving. */
function ratioWhere(excess: (ratio: number) => number, highest: number): number {
  let [low, high] = [1, highest];
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (low + high) / 2;
    if (excess(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
