import { requireNumber } from '../require-number.js';

/** Reference air of a compressor map. */
export type MapReference = 'gas-stand' | 'standard-day';

/** 298 K and 100 kPa (SAE J1826, from memory); 288.15 K and 101.325 kPa. They differ by 3 % in flow. */
export const MAP_REFERENCES: Readonly<Record<MapReference, { readonly k: number; readonly absKpa: number }>> =
  {
    'gas-stand': { k: 298, absKpa: 100 },
    'standard-day': { k: 288.15, absKpa: 101.325 },
  };

/** Air at the compressor's inlet. */
export interface CompressorInlet {
  readonly inletK: number;
  readonly inletAbsKpa: number;
}

/**
 * Mass flow as a compressor map wants it: brought to the map's reference air.
 *
 * @param massFlowKgPerS measured or estimated flow, kg/s
 * @returns kg/s at reference air
 * @throws NotFiniteError, OutOfRangeError
 * Source: similarity of compressors, m √(T/Tref) / (p/pref).
 * @example correctedFlow(0.15, { inletK: 308, inletAbsKpa: 97 }, 'gas-stand') // 0.157212
 */
export function correctedFlow(
  massFlowKgPerS: number,
  inlet: CompressorInlet,
  reference: MapReference = 'gas-stand',
): number {
  requireNumber('correctedFlow', 'massFlowKgPerS', massFlowKgPerS, { min: 0, max: 10 });
  checkInlet('correctedFlow', inlet);
  const { k, absKpa } = MAP_REFERENCES[reference];
  return (massFlowKgPerS * Math.sqrt(inlet.inletK / k)) / (inlet.inletAbsKpa / absKpa);
}

/**
 * Compressor speed as a map wants it: brought to the map's reference air.
 *
 * @param shaftSpeedRpm r/min
 * @returns r/min at reference air
 * @throws NotFiniteError, OutOfRangeError
 * Source: similarity of compressors, N / √(T/Tref).
 */
export function correctedShaftSpeed(
  shaftSpeedRpm: number,
  inlet: CompressorInlet,
  reference: MapReference = 'gas-stand',
): number {
  requireNumber('correctedShaftSpeed', 'shaftSpeedRpm', shaftSpeedRpm, { min: 0, max: 500_000 });
  checkInlet('correctedShaftSpeed', inlet);
  return shaftSpeedRpm / Math.sqrt(inlet.inletK / MAP_REFERENCES[reference].k);
}

function checkInlet(functionName: string, inlet: CompressorInlet): void {
  requireNumber(functionName, 'inletK', inlet.inletK, { min: 150, max: 400 });
  requireNumber(functionName, 'inletAbsKpa', inlet.inletAbsKpa, { min: 20, max: 115 });
}
