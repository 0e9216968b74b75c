import type { EnginePoint, EnginePower, MapPlaceOf, MapRunPoint } from '@pullbook/contracts';
import {
  chargePath,
  correctedFlow,
  fuelMassFlow,
  gaugeKpa,
  injectorDuty,
  powerBand,
  torqueAtPower,
  type ChargePath,
  type MapLocation,
} from '@pullbook/tuning-math';
import type { EngineWay } from './engine-air.js';
import type { EngineInputs } from './engine-inputs.js';

const ICE_POINT_K = 273.15;

/**
 * Relative standard uncertainties of what a power band is made of, %: as entered by a workshop, and as assumed.
 * Common practice, no source.
 */
const UNCERTAINTIES = {
  air: { key: 'volumetricEfficiencyPct', entered: 4, assumed: 8 },
  mixture: { key: 'airFuelRatio', entered: 2, assumed: 5 },
  fuel: { key: 'fuelGramsPerKwh', entered: 4, assumed: 8 },
} as const;

/** One boost at one engine speed. */
export interface RunningPoint {
  readonly boostKpa: number;
  readonly engineSpeedRpm: number;
}

/** Which goal a point stands for. */
export type PointName = Pick<EnginePoint, 'at' | 'presetId' | 'presetName' | 'boostKpa'>;

/** What becomes of air and fuel at a boost, at the rev limit. */
export function enginePoint(
  way: EngineWay,
  inputs: EngineInputs,
  name: PointName,
  fromRpm: number,
): EnginePoint {
  const engineSpeedRpm = way.revLimitRpm;
  const path = pathAt(way, { boostKpa: name.boostKpa, engineSpeedRpm });
  const fuelKgPerS = fuelMassFlow(path.airKgPerS, way.airFuelRatio);
  return {
    ...name,
    engineSpeedRpm,
    pressureRatio: path.pressureRatio,
    efficiencyPct: path.efficiencyRatio * 100,
    outletC: path.outletK - ICE_POINT_K,
    chargeC: path.chargeK - ICE_POINT_K,
    densityRatio: path.densityRatio,
    airKgPerS: path.airKgPerS,
    fuelKgPerS,
    injectorDutyPct: way.injectors === null ? null : injectorDuty({ ...way.injectors, fuelKgPerS }),
    power: powerAt(way, inputs, path.airKgPerS),
    flowKgPerS: flowOnMap(way, path.airKgPerS),
    place: placeOf(path.location),
    run: lineOverSpeed(way, name.boostKpa, fromRpm),
  };
}

/** The way of the air at one boost and speed. */
export function pathAt({ path }: EngineWay, { boostKpa, engineSpeedRpm }: RunningPoint): ChargePath {
  return chargePath({
    ...path,
    intake: { ...path.intake, boostKpa: gaugeKpa(boostKpa) },
    engine: { ...path.engine, engineSpeedRpm },
  });
}

/** A running point as the compressor map shows it, with its place there. */
export function onMap(
  way: EngineWay,
  point: RunningPoint,
): { readonly at: MapRunPoint; readonly place: MapPlaceOf | null } {
  const { airKgPerS, pressureRatio, location } = pathAt(way, point);
  const { boostKpa, engineSpeedRpm } = point;
  const at = { engineSpeedRpm, boostKpa, flowKgPerS: flowOnMap(way, airKgPerS), pressureRatio };
  return { at, place: placeOf(location) };
}

function flowOnMap({ path, air }: EngineWay, airKgPerS: number): number {
  const inletAbsKpa = air.barometerAbsKpa - (path.intake.filterLossKpa ?? 0);
  return correctedFlow(airKgPerS, { inletK: path.inletK, inletAbsKpa }, path.map?.reference);
}

function placeOf(location: MapLocation | null): MapPlaceOf | null {
  if (location === null) return null;
  const { place, surgeMarginPct, chokeMarginPct, shaftSpeedRpm } = location;
  return { place, surgeMarginPct, chokeMarginPct, shaftSpeedRpm };
}

const RUN_POINTS = 13;

function lineOverSpeed(way: EngineWay, boostKpa: number, fromRpm: number): MapRunPoint[] {
  const low = Math.min(fromRpm, way.revLimitRpm);
  return Array.from({ length: RUN_POINTS }, (_, index) => {
    const engineSpeedRpm = Math.round(low + ((way.revLimitRpm - low) * index) / (RUN_POINTS - 1));
    return onMap(way, { boostKpa, engineSpeedRpm }).at;
  });
}

function powerAt(way: EngineWay, { list }: EngineInputs, airKgPerS: number): EnginePower {
  const [air, mixture, fuel] = [UNCERTAINTIES.air, UNCERTAINTIES.mixture, UNCERTAINTIES.fuel].map((one) =>
    list.some(({ key, basis }) => key === one.key && basis === 'entered') ? one.entered : one.assumed,
  ) as [number, number, number];
  const band = powerBand({
    airKgPerS: { value: airKgPerS, uncertaintyPct: air },
    airFuelRatio: { value: way.airFuelRatio, uncertaintyPct: mixture },
    fuelGramsPerKwh: { value: way.fuelGramsPerKwh, uncertaintyPct: fuel },
  });
  return {
    powerKw: band.powerKw,
    lowKw: band.lowKw,
    highKw: band.highKw,
    levelRatio: band.level,
    torqueNm: torqueAtPower(band.powerKw, way.revLimitRpm),
    uncertaintyPct: band.uncertaintyPct,
    airUncertaintyPct: air,
    mixtureUncertaintyPct: mixture,
    fuelUncertaintyPct: fuel,
  };
}
