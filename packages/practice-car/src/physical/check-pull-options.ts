import { NotFiniteError, OutOfRangeError } from '@pullbook/tuning-math';
import type { PhysicalCar } from './physical-car.js';
import type { PullPlan } from './pull-plan.js';

type Limits = readonly [low: number, high: number];

function check(argument: string, value: number, [low, high]: Limits): void {
  if (!Number.isFinite(value))
    throw new NotFiniteError('runPull', { argument, value, allowed: 'to be a finite number' });
  if (value < low || value > high)
    throw new OutOfRangeError('runPull', {
      argument,
      value,
      allowed: `from ${String(low)} to ${String(high)}`,
    });
}

/**
 * Refuses what no pull of this car can have.
 *
 * @throws NotFiniteError, OutOfRangeError naming the option
 */
export function checkPullOptions(car: PhysicalCar, plan: PullPlan): void {
  const { revLimitRpm, idleRpm } = car.engine;
  const endRpm = plan.endRpm ?? revLimitRpm;
  check('dutyPct', plan.dutyPct, [0, 100]);
  check('gateHoldPct', plan.gateHoldPct, [0, 100]);
  check('targetKpa', plan.targetKpa, [1, 500]);
  check('correctionStrength', plan.correctionStrength, [0, 20]);
  check('gear', plan.gear, [1, car.vehicle.gearRatios.length]);
  check('startRpm', plan.startRpm, [idleRpm, revLimitRpm]);
  check('endRpm', endRpm, [plan.startRpm + 100, revLimitRpm]);
  check('gradientPct', plan.gradientPct, [-30, 30]);
  check('ambient.pressureAbsKpa', plan.ambient.pressureAbsKpa, [50, 110]);
  check('ambient.temperatureC', plan.ambient.temperatureC, [-50, 60]);
  check('heatSoakC', plan.heatSoakC, [-10, 120]);
  check('supplyV', plan.supplyV, [8, 18]);
  check('stepS', plan.stepS, [1e-5, 0.01]);
  check('solenoidPhaseRatio', plan.solenoidPhaseRatio, [0, 1]);
  for (const fault of plan.faults) check(`severityRatio of ${fault.kind}`, fault.severityRatio, [0, 1]);
}
