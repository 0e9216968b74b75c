import { requireNumber } from '../require-number.js';
import { absoluteKpa } from '../units/absolute-kpa.js';
import { airMassFlow } from './air-mass-flow.js';
import { chargeDensityRatio } from './charge-density-ratio.js';
import { chargeTemperature } from './charge-temperature.js';
import type { CompressorMap } from './compressor-map.js';
import { compressorOutletTemperature } from './compressor-outlet-temperature.js';
import { compressorPressureRatio, type IntakePressures } from './compressor-pressure-ratio.js';
import { correctedFlow } from './corrected-flow.js';
import { locateOnCompressorMap, type MapLocation } from './locate-on-compressor-map.js';

/** Intake, compressor, cooler and engine at one boost and speed. */
export interface ChargePathInputs {
  readonly intake: IntakePressures;
  /** Air into the compressor, K. */
  readonly inletK: number;
  /** Used where there is no map, or where the point lies outside it. */
  readonly efficiencyRatio: number;
  /** Charge cooler; effectiveness 0 for none. */
  readonly cooler: { readonly coolantK: number; readonly effectivenessRatio: number };
  readonly engine: {
    readonly displacementLitre: number;
    readonly engineSpeedRpm: number;
    readonly volumetricEfficiencyRatio: number;
  };
  readonly map?: CompressorMap;
}

/** What becomes of the air on its way to the cylinders. */
export interface ChargePath {
  readonly pressureRatio: number;
  readonly outletK: number;
  readonly chargeK: number;
  readonly densityRatio: number;
  readonly airKgPerS: number;
  readonly efficiencyRatio: number;
  /** Place on the map; null without one. */
  readonly location: MapLocation | null;
  /** Whether efficiency and flow agree; always true without a map. */
  readonly converged: boolean;
  readonly iterations: number;
}

const MAX_ITERATIONS = 50;
const FULL_STEPS = 12;
/** Far below what any map can be read to. */
const EFFICIENCY_TOLERANCE = 1e-9;

/**
 * The whole way of the air: pressure ratio, compressor outlet and charge temperature, density ratio, air
 * flow, and the place on the map. With a map, efficiency and flow depend on one another and are iterated.
 *
 * @throws NotFiniteError, OutOfRangeError, as the single steps do
 * Source: the functions that it joins.
 */
export function chargePath(inputs: ChargePathInputs): ChargePath {
  requireNumber('chargePath', 'efficiencyRatio', inputs.efficiencyRatio, { min: 0.05, max: 1 });
  const pressureRatio = compressorPressureRatio(inputs.intake);
  let efficiencyRatio = inputs.efficiencyRatio;
  for (let iterations = 1; ; iterations += 1) {
    const state = passOnce(inputs, pressureRatio, efficiencyRatio);
    const location = inputs.map === undefined ? null : place(inputs, inputs.map, { pressureRatio, ...state });
    const next = location?.efficiencyRatio ?? inputs.efficiencyRatio;
    const converged = Math.abs(next - efficiencyRatio) <= EFFICIENCY_TOLERANCE;
    if (converged || iterations === MAX_ITERATIONS) {
      return { pressureRatio, ...state, efficiencyRatio, location, converged, iterations };
    }
    // Efficiency tells on flow but little, so the full step settles in a few rounds; where it swings, half steps do.
    efficiencyRatio = iterations <= FULL_STEPS ? next : 0.5 * (efficiencyRatio + next);
  }
}

function passOnce(
  inputs: ChargePathInputs,
  pressureRatio: number,
  efficiencyRatio: number,
): Pick<ChargePath, 'outletK' | 'chargeK' | 'densityRatio' | 'airKgPerS'> {
  const { inletK, cooler, engine, intake } = inputs;
  // A compressor that makes no pressure does not heat: below ratio 1 the engine merely breathes through it.
  const workingRatio = Math.max(1, pressureRatio);
  const outletK = compressorOutletTemperature({ inletK, pressureRatio: workingRatio, efficiencyRatio });
  const chargeK = chargeTemperature({ outletK, ...cooler });
  const manifoldAbsKpa = absoluteKpa(intake.barometerAbsKpa + intake.boostKpa);
  const ratio = manifoldAbsKpa / intake.barometerAbsKpa;
  const densityRatio = chargeDensityRatio({ pressureRatio: ratio, ambientK: inletK, chargeK });
  return { outletK, chargeK, densityRatio, airKgPerS: airMassFlow({ ...engine, manifoldAbsKpa, chargeK }) };
}

function place(
  inputs: ChargePathInputs,
  map: CompressorMap,
  { pressureRatio, airKgPerS }: { pressureRatio: number; airKgPerS: number },
): MapLocation | null {
  if (pressureRatio < 1 || airKgPerS === 0) return null;
  const inletAbsKpa = inputs.intake.barometerAbsKpa - (inputs.intake.filterLossKpa ?? 0);
  const flow = correctedFlow(airKgPerS, { inletK: inputs.inletK, inletAbsKpa }, map.reference);
  return locateOnCompressorMap(map, { correctedFlowKgPerS: flow, pressureRatio });
}
