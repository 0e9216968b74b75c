import {
  drawBetween,
  drawCar,
  quickPeak,
  runPull,
  seededRandom,
  type PhysicalCar,
  type Random,
} from '@pullbook/practice-car';
import {
  fitConditions,
  forecastPeak,
  type ConditionedPull,
  type KnownConditions,
} from '@pullbook/tuning-math';

/** How many new peaks of one car the forecast's 95 % range held. */
export interface ForecastRow {
  readonly forecasts: number;
  readonly held: number;
  /** Forecasts that named nothing as unknown, and how many of those held. */
  readonly known: number;
  readonly knownHeld: number;
}

const LEARNING_PULLS = 12;
const TEST_PULLS = 3;
/** Twice the usual step of the simulation: peaks move by less than 1 %, pulls and tests alike, in half the time. */
const STEP_S = 0.008;

interface Setting {
  readonly car: PhysicalCar;
  readonly dutyPct: number;
  readonly targetKpa: number;
  readonly random: Random;
}

/** Twelve pulls of a car on days and roads that differ, then three more on others: does the range hold their peaks? */
export function measureForecast(seed: number): ForecastRow {
  const setting = drawSetting(seed);
  const pulls: ConditionedPull[] = [];
  for (let made = 0; made < LEARNING_PULLS; made += 1)
    pulls.push(pullIn(setting, drawConditions(setting.random)));
  const model = fitConditions(pulls);
  let [held, known, knownHeld] = [0, 0, 0];
  for (let test = 0; test < TEST_PULLS; test += 1) {
    const conditions = drawConditions(setting.random);
    const { peakKpa } = pullIn(setting, conditions);
    const range = forecastPeak(model, conditions, { ceilingKpa: 500 });
    const isHeld = peakKpa >= range.lowKpa && peakKpa <= range.highKpa;
    held += isHeld ? 1 : 0;
    if (range.unknown.length > 0) continue;
    known += 1;
    knownHeld += isHeld ? 1 : 0;
  }
  return { forecasts: TEST_PULLS, held, known, knownHeld };
}

/** The rows of all cars as figures. */
export function scoreForecast(rows: readonly ForecastRow[]): ForecastRow & { readonly cars: number } {
  const sum = (figure: (row: ForecastRow) => number): number =>
    rows.reduce((total, row) => total + figure(row), 0);
  return {
    cars: rows.length,
    forecasts: sum((row) => row.forecasts),
    held: sum((row) => row.held),
    known: sum((row) => row.known),
    knownHeld: sum((row) => row.knownHeld),
  };
}

function drawSetting(seed: number): Setting {
  const random = seededRandom(seed * 17 + 3);
  const car = drawCar(random);
  const dutyPct = drawBetween(random, 25, 60);
  // The target only steers the gate hold, which is 0 here.
  return { car, dutyPct, targetKpa: runPull(car, { dutyPct, stepS: STEP_S }).peakKpa, random };
}

/** A year's weather between the coast and a pass of 1500 m, third or fourth gear, up to 3 % of gradient. */
function drawConditions(random: Random): KnownConditions {
  return {
    gear: random() < 0.5 ? 3 : 4,
    gradientPct: drawBetween(random, -3, 3),
    intakeC: drawBetween(random, -5, 35),
    barometerAbsKpa: drawBetween(random, 84, 103),
    heatSoakC: random() < 0.5 ? 0 : drawBetween(random, 0, 25),
  };
}

function pullIn({ car, dutyPct, targetKpa, random }: Setting, conditions: KnownConditions): ConditionedPull {
  const ambient = { pressureAbsKpa: conditions.barometerAbsKpa, temperatureC: conditions.intakeC };
  const { gear, gradientPct, heatSoakC } = conditions;
  const peak = quickPeak(
    car,
    { dutyPct, targetKpa, gear, gradientPct, heatSoakC, ambient, stepS: STEP_S },
    random,
  );
  return { peakKpa: peak.recordedPeakKpa, conditions };
}
