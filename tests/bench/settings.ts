/**
 * Measures the search for gate hold, the proof, the drift alarm and the forecast on simulated cars.
 * Usage: npm run bench:settings -- [cars, default 1000] [cars of the physical model, default 40]
 */
import { measureDrift } from './settings/measure-drift.js';
import { measureForecast } from './settings/measure-forecast.js';
import { measureGateHold } from './settings/measure-gate-hold.js';
import { measureProof } from './settings/measure-proof.js';

const cars = Number(process.argv[2] ?? 1000);
const physicalCars = Number(process.argv[3] ?? 40);
const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
const line = (name: string, figures: string, wanted: string): void => {
  console.log(`| ${name} | ${figures} | ${wanted} |`);
};

console.log(`${cars} drawn cars, ${physicalCars} of the physical model\n`);
console.log('| what | measured | wanted |\n| --- | --- | --- |');
for (const pooledRatio of [null, 0.015]) {
  const proof = measureProof(cars, pooledRatio);
  const name =
    pooledRatio === null ? "proof, the preset's own scatter" : 'proof, workshop scatter of 1.5 % pooled in';
  line(
    name,
    `${proof.proven} of ${proof.cars} proven, median ${proof.medianPulls} pulls, wrong ${percent(proof.wrong / proof.cars)} of cars, ${percent(proof.wrong / proof.proven)} of those proven`,
    'wrong in at most 5 %',
  );
}
for (const knowsScatter of [false, true]) {
  const drift = measureDrift(cars, knowsScatter);
  line(
    knowsScatter ? 'drift of 4 %, scatter of the car known' : 'drift of 4 %, common scatter assumed',
    `median ${drift.medianPulls} pulls, 90 % within ${drift.p90Pulls}, found within 20: ${percent(drift.foundWithin20)}, one false alarm in ${drift.pullsPerFalseAlarm.toFixed(0)} pulls`,
    'median 4 pulls, one false alarm in 370 or more',
  );
}
const forecast = measureForecast(physicalCars);
line(
  'forecast range of 95 %',
  `held ${percent(forecast.held / forecast.forecasts)} of ${forecast.forecasts}; ${percent(forecast.knownHeld / forecast.known)} of the ${forecast.known} with nothing unknown`,
  '93 to 97 %',
);
const hold = measureGateHold(cars);
line(
  'gate hold',
  `found on ${hold.found} of ${hold.cars}, ${percent(hold.withinThreePoints)} within 3 points (median miss ${hold.medianMissPoints}, over by more than 3: ${percent(hold.overLimitByMoreThanThree)}), median ${hold.medianPulls} pulls, 90 % within ${hold.p90Pulls}, ${hold.carsPastCeiling} cars past the ceiling (${percent(hold.carsPastCeiling / hold.cars)})`,
  'within 3 points, median 6 pulls, ceiling passed in at most 0.5 % of cars',
);
