import { drawBetween } from '../random/draw-between.js';
import type { Random } from '../random/seeded-random.js';
import { compressorOutletK } from './compressor.js';
import { AIR_FUEL_RATIO, exhaustK, volumetricRatio } from './engine.js';
import { AIR_CP, AIR_EXPONENT, AIR_R, EXHAUST_CHOKED, EXHAUST_CP, EXHAUST_EXPONENT } from './gas.js';
import type { CompressorPart, EnginePart, ShaftPart, TurbinePart } from './physical-car.js';

export interface MatchedTurbo {
  readonly compressor: CompressorPart;
  readonly turbine: TurbinePart;
  readonly shaft: ShaftPart;
  /** Diameter of the gate's port. */
  readonly portM: number;
  /** Air flow at the design point. */
  readonly designKgPerS: number;
}

const DESIGN_K = 298.15;
const DESIGN_PA = 101_325;
const COOLED_RATIO = 0.7;
/** Where on its own map the design point lies: share of psiMax. */
const DESIGN_HEAD_RATIO = 0.78;
const REFERENCE_WHEEL_M = 0.05;

interface Design {
  readonly pressureRatio: number;
  readonly flowKgPerS: number;
  readonly efficiencyRatio: number;
  readonly exhaustKgPerS: number;
  readonly exhaustK: number;
  readonly tipMps: number;
}

function designPoint(
  engine: EnginePart,
  random: Random,
  headMaxRatio: number,
  efficiencyRatio: number,
): Design {
  const pressureRatio = drawBetween(random, 1.9, 2.7);
  const engineRpm = engine.revLimitRpm * drawBetween(random, 0.62, 0.8);
  const outletK = compressorOutletK(DESIGN_K, pressureRatio, efficiencyRatio);
  const chargeK = outletK - COOLED_RATIO * (outletK - DESIGN_K);
  const chargePa = 0.95 * pressureRatio * DESIGN_PA;
  const swept = (engine.displacementM3 * engineRpm) / 120;
  const flowKgPerS = (volumetricRatio(engine, engineRpm) * swept * chargePa) / (AIR_R * chargeK);
  const ideal = AIR_CP * DESIGN_K * (pressureRatio ** AIR_EXPONENT - 1);
  return {
    pressureRatio,
    flowKgPerS,
    efficiencyRatio,
    exhaustKgPerS: flowKgPerS * (1 + 1 / AIR_FUEL_RATIO),
    exhaustK: exhaustK(engine, chargePa, engineRpm, 1),
    tipMps: Math.sqrt((2 * ideal) / (DESIGN_HEAD_RATIO * headMaxRatio)),
  };
}

/** The turbine that just drives the compressor at the design point while the gate passes a share of the exhaust. */
function matchTurbine(design: Design, random: Random, wheelM: number): TurbinePart {
  const bypassRatio = drawBetween(random, 0.2, 0.48);
  const efficiencyMaxRatio = drawBetween(random, 0.64, 0.72);
  const outletPa = DESIGN_PA + drawBetween(random, 6000, 20_000);
  const turbineKgPerS = (1 - bypassRatio) * design.exhaustKgPerS;
  const outletK = compressorOutletK(DESIGN_K, design.pressureRatio, design.efficiencyRatio);
  const powerW = design.flowKgPerS * AIR_CP * (outletK - DESIGN_K);
  const heat = turbineKgPerS * EXHAUST_CP * design.exhaustK;
  const dropRatio = powerW / (efficiencyMaxRatio * heat);
  const inletPa = outletPa * (1 - dropRatio) ** (-1 / EXHAUST_EXPONENT);
  const spouting = Math.sqrt(2 * EXHAUST_CP * design.exhaustK * dropRatio);
  const shaftRadPerS = (2 * design.tipMps) / wheelM;
  return {
    wheelM: ((2 * 0.65 * spouting) / shaftRadPerS) * drawBetween(random, 0.94, 1.06),
    capacityKgK05PerSPa:
      (turbineKgPerS * Math.sqrt(design.exhaustK)) / Math.sqrt(inletPa * inletPa - outletPa * outletPa),
    efficiencyMaxRatio,
    tailpipeLossPaS2PerKg2: (outletPa - DESIGN_PA) / design.exhaustKgPerS ** 2,
  };
}

/**
 * Compressor, turbine and gate port that suit an engine.
 *
 * A design point (pressure ratio 1.9 to 2.7 at 62 to 80 % of the rev limit) fixes the wheel through the map's flow
 * coefficient there, and the turbine's capacity through the power balance with 20 to 48 % of the exhaust passing the
 * gate. Inertia scales with the fifth power of the wheel (geometric similarity). The port's capacity is 0.7 to 1.9
 * times the turbine's; small ones creep.
 *
 * @param engine the engine
 * @param random stream to draw from
 */
export function matchTurbo(engine: EnginePart, random: Random): MatchedTurbo {
  const map = {
    headMaxRatio: drawBetween(random, 1.12, 1.3),
    flowMaxRatio: drawBetween(random, 0.23, 0.29),
    bendRatio: drawBetween(random, 3.6, 5.5),
    efficiencyMaxRatio: drawBetween(random, 0.69, 0.77),
    efficiencyFlowRatio: drawBetween(random, 0.52, 0.64),
  };
  const design = designPoint(engine, random, map.headMaxRatio, map.efficiencyMaxRatio * 0.97);
  const flowRatio = map.flowMaxRatio * (1 - Math.exp(map.bendRatio * (DESIGN_HEAD_RATIO - 1)));
  const density = DESIGN_PA / (AIR_R * DESIGN_K);
  const wheelM = Math.sqrt(design.flowKgPerS / (density * (Math.PI / 4) * design.tipMps * flowRatio));
  const turbine = matchTurbine(design, random, wheelM);
  const portCapacity = turbine.capacityKgK05PerSPa * drawBetween(random, 0.7, 1.9);
  return {
    compressor: {
      ...map,
      wheelM,
      filterLossPaS2PerKg2: drawBetween(random, 1500, 4500) / design.flowKgPerS ** 2,
    },
    turbine,
    shaft: {
      inertiaKgM2: drawBetween(random, 1.3e-5, 2.2e-5) * (wheelM / REFERENCE_WHEEL_M) ** 5,
      frictionNmS: drawBetween(random, 0.8e-6, 2.2e-6),
    },
    portM: Math.sqrt(portCapacity / (0.75 * (Math.PI / 4) * EXHAUST_CHOKED)),
    designKgPerS: design.flowKgPerS,
  };
}
