import type { PictureTable } from '../figures/shapes.js';
import type { MapFigures } from './map-figures.js';

/** The map in words: its lines, what runs across it, and which pulls leave it. */
export function describeMap({ lines, goals, pulls }: MapFigures): string {
  const [slowest, fastest] = [lines[0], lines.at(-1)];
  const outside = pulls.filter(({ isOutside }) => isOutside).map(({ number }) => number);
  const parts = [
    slowest && fastest
      ? `Compressor map, pressure ratio over corrected flow in kg/s: ${lines.length} speed lines from ${speed(slowest.shaftSpeedRpm)} to ${speed(fastest.shaftSpeedRpm)} r/min`
      : 'Compressor map without lines',
    goals.length === 0
      ? ''
      : `the engine’s lines: ${goals.map(({ letter, name }) => `${letter} ${name}`).join(', ')}`,
    pulls.length === 0 ? 'no pulls on it' : `${pulls.length} ${pulls.length === 1 ? 'pull' : 'pulls'} on it`,
    outside.length === 0 ? '' : `leaving it: ${outside.join(', ')}`,
  ];
  return `${parts.filter(Boolean).join('; ')}.`;
}

/** Speed lines, engine's lines and pulls as a table: name, flow and ratio at surge, start or peak, and where it ends. */
export function mapTable({ lines, goals, pulls }: MapFigures): PictureTable {
  return {
    header: ['What', 'Flow kg/s', 'Pressure ratio', 'Efficiency %', 'Where'],
    rows: [
      ...pulls.map(({ number, name, peak, standing }) => [
        `pull ${number}, ${name}`,
        flow(peak.flowKgPerS),
        peak.pressureRatio.toFixed(2),
        '',
        standing,
      ]),
      ...goals.map(({ letter, name, spots }) => {
        const end = spots.at(-1);
        return [
          `line ${letter}, ${name}`,
          end ? flow(end.flowKgPerS) : '',
          end ? end.pressureRatio.toFixed(2) : '',
          '',
          'at the rev limit',
        ];
      }),
      ...lines.flatMap(({ shaftSpeedRpm, spots, efficienciesPct }) =>
        spots.map((spot, index) => [
          `${speed(shaftSpeedRpm)} r/min`,
          flow(spot.flowKgPerS),
          spot.pressureRatio.toFixed(2),
          efficienciesPct?.[index]?.toFixed(0) ?? '',
          index === 0 ? 'surge' : index === spots.length - 1 ? 'choke' : '',
        ]),
      ),
    ],
  };
}

const flow = (kgPerS: number): string => kgPerS.toFixed(3);
const speed = (rpm: number): string => String(Math.round(rpm));
