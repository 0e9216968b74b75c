import { AIR_CP, AIR_EXPONENT, AIR_R } from './gas.js';
import type { CompressorPart } from './physical-car.js';

export interface CompressorPoint {
  readonly flowKgPerS: number;
  readonly outletK: number;
  readonly powerW: number;
  readonly efficiencyRatio: number;
}

export interface CompressorInlet {
  readonly pressurePa: number;
  readonly temperatureK: number;
}

const EFFICIENCY_FALL = 0.34;
const EFFICIENCY_FLOOR = 0.35;
/** A turned-down wheel that is driven by the air gives back a small part of the ideal work. */
const WINDMILL_RATIO = 0.3;
/** Past this share of psiMax the reverse flow grows no further; it only bounds the sums during a surge. */
const HEAD_LIMIT_RATIO = 1.3;
/** Added to tip speed in quadrature, so that a wheel that hardly turns has a finite map. */
const SLOWEST_TIP_MPS = 100;

/**
 * Temperature behind a compressor, T2 = T1 {1 + [PR^k - 1] / eta}, k = (gamma - 1) / gamma.
 *
 * @param inletK absolute temperature before it
 * @param pressureRatio absolute outlet over inlet pressure, above 0
 * @param efficiencyRatio isentropic, total to total, above 0 and at most 1
 * Source: Heywood, Internal Combustion Engine Fundamentals, chapter 6.
 */
export function compressorOutletK(inletK: number, pressureRatio: number, efficiencyRatio: number): number {
  return inletK * (1 + (pressureRatio ** AIR_EXPONENT - 1) / efficiencyRatio);
}

/** Efficiency over flow coefficient: a parabola about its best point, never below a floor. */
function efficiencyAt(part: CompressorPart, flowRatio: number): number {
  const away = flowRatio / (part.efficiencyFlowRatio * part.flowMaxRatio) - 1;
  const falling = part.efficiencyMaxRatio * (1 - EFFICIENCY_FALL * away * away);
  const over = falling - EFFICIENCY_FLOOR;
  // A smooth maximum of the parabola and the floor.
  return EFFICIENCY_FLOOR + (over + Math.sqrt(over * over + 1e-3)) / 2;
}

/**
 * Flow, outlet temperature and power of the compressor at a shaft speed, from the pressures about it.
 *
 * Generic map in dimensionless form: flow coefficient phi = phiMax {1 - exp[b (psi / psiMax - 1)]} of the work
 * coefficient psi = cp T1 (PR^k - 1) / (U^2 / 2). Explicit in flow, falling, and past psiMax the flow turns back.
 *
 * @param part the compressor
 * @param inlet what it draws from
 * @param outletPa absolute pressure it blows against
 * @param shaftRadPerS speed, at least 0
 * Source: Moraal and Kolmanovsky, SAE 1999-01-0908 (form of the map, coefficients ours).
 */
export function compressorPoint(
  part: CompressorPart,
  inlet: CompressorInlet,
  outletPa: number,
  shaftRadPerS: number,
): CompressorPoint {
  const tipMps = (shaftRadPerS * part.wheelM) / 2;
  const ideal = AIR_CP * inlet.temperatureK * ((outletPa / inlet.pressurePa) ** AIR_EXPONENT - 1);
  const head = ideal / (0.5 * (tipMps * tipMps + SLOWEST_TIP_MPS * SLOWEST_TIP_MPS));
  const load = Math.min(HEAD_LIMIT_RATIO, head / part.headMaxRatio);
  const flowRatio = part.flowMaxRatio * (1 - Math.exp(part.bendRatio * (load - 1)));
  const density = inlet.pressurePa / (AIR_R * inlet.temperatureK);
  const flowKgPerS = density * (Math.PI / 4) * part.wheelM * part.wheelM * tipMps * flowRatio;
  const efficiencyRatio = efficiencyAt(part, flowRatio);
  const work = ideal >= 0 ? ideal / efficiencyRatio : ideal * WINDMILL_RATIO;
  return {
    flowKgPerS,
    outletK: inlet.temperatureK + Math.max(0, work) / AIR_CP,
    powerW: Math.abs(flowKgPerS) * work,
    efficiencyRatio,
  };
}
