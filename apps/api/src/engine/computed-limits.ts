import { boostAtInjectorDuty, boostAtMapLimit, type CompressorMap } from '@pullbook/tuning-math';
import { engineWay, type EngineWay } from './engine-air.js';
import { assumedOf, missingOf, type EngineInputs, type EngineKey } from './engine-inputs.js';

/** A limit that follows from engine data. */
export interface ComputedLimit {
  /** kPa gauge; null where it is not known or does not limit. */
  readonly kpa: number | null;
  /** `known`: rests on what was entered alone. `estimate`: on assumed values too, or it makes no sense. */
  readonly state: 'known' | 'estimate' | 'unknown';
  readonly why: string;
  /** What is missing, or assumed. */
  readonly open: readonly string[];
}

const ofTheAir: readonly EngineKey[] = [
  ...(['displacementL', 'revLimitRpm', 'volumetricEfficiencyPct', 'coolerEffectivenessPct'] as const),
  ...(['filterLossKpa', 'coolerLossKpa', 'airC', 'heightM'] as const),
];
const ofTheFuel: readonly EngineKey[] = [
  ...(['airFuelRatio', 'fuelDensityKgPerL', 'injectorCount', 'injectorFlowCm3PerMin'] as const),
  ...(['injectorRatedKpa', 'injectorDifferenceKpa', 'highestInjectorDutyPct'] as const),
];

/** Boost that the injectors can feed at the rev limit, with what the answer rests on. */
export function injectorLimit(inputs: EngineInputs, map: CompressorMap | null): ComputedLimit {
  const keys = [...ofTheAir, ...ofTheFuel, ...ofEfficiency(map)];
  const way = engineWay(inputs, map);
  const open = missingOf(inputs, keys);
  if (way === null || way.injectors === null) return unknown(open);
  const { highestInjectorDutyPct, revLimitRpm } = way;
  const kpa = boostAtInjectorDuty({
    ...atRevLimit(way),
    airFuelRatio: way.airFuelRatio,
    injectors: way.injectors,
    highestDutyPct: highestInjectorDutyPct,
  });
  const duty = `${highestInjectorDutyPct} % injector duty at ${revLimitRpm} r/min`;
  if (kpa === null)
    return { kpa, state: 'unknown', why: `no boost that can be reckoned takes ${duty}`, open: [] };
  const roundedKpa = floorTenth(kpa);
  if (roundedKpa <= 0) {
    const why = `by these figures ${duty} is passed without any boost: check size, number and pressure of the injectors`;
    return { kpa: 0, state: 'estimate', why, open: [] };
  }
  return judged(roundedKpa, `reaches ${duty}`, assumedOf(inputs, keys));
}

/** Boost up to which the engine stays inside the compressor's map at the rev limit, with what the answer rests on. */
export function mapLimit(inputs: EngineInputs, map: CompressorMap | null): ComputedLimit {
  if (map === null) return unknown(['compressor map', ...missingOf(inputs, ofTheAir)]);
  const way = engineWay(inputs, map);
  if (way === null) return unknown(missingOf(inputs, ofTheAir));
  const { surgeMarginPct, chokeMarginPct } = inputs.values;
  const kpa = boostAtMapLimit({
    ...atRevLimit(way),
    map,
    surgeMarginPct: surgeMarginPct ?? NaN,
    chokeMarginPct: chokeMarginPct ?? NaN,
  });
  const margins = `${chokeMarginPct} % of choke and ${surgeMarginPct} % of surge at ${way.revLimitRpm} r/min`;
  if (kpa === null) {
    const why = `at the rev limit this engine never runs inside the map, away by ${margins}: check the map, its unit of flow, and the displacement`;
    return { kpa, state: 'unknown', why, open: [] };
  }
  if (kpa <= 0)
    return { kpa: 0, state: 'estimate', why: `comes within ${margins} without any boost`, open: [] };
  return judged(
    kpa,
    `comes within ${margins}, or leaves the map`,
    assumedOf(inputs, [...ofTheAir, ...ofEfficiency(map)]),
  );
}

/** A map with efficiencies tells them better than one figure does. */
function ofEfficiency(map: CompressorMap | null): readonly EngineKey[] {
  const isTold = map?.lines.every((line) => line.efficiencyRatios !== null) ?? false;
  return isTold ? [] : ['compressorEfficiencyPct'];
}

function atRevLimit({ path, revLimitRpm }: EngineWay): EngineWay['path'] & {
  readonly engine: EngineWay['path']['engine'] & { readonly engineSpeedRpm: number };
} {
  return { ...path, engine: { ...path.engine, engineSpeedRpm: revLimitRpm } };
}

function judged(kpa: number, why: string, assumed: readonly string[]): ComputedLimit {
  return { kpa, state: assumed.length === 0 ? 'known' : 'estimate', why, open: assumed };
}

function unknown(open: readonly string[]): ComputedLimit {
  return { kpa: null, state: 'unknown', why: 'cannot be reckoned yet', open };
}

/** Down, so that what is written is never above what was found. */
function floorTenth(kpa: number): number {
  return Math.floor(kpa * 10) / 10;
}
