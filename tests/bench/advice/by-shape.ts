import type { TuningRun } from './tune-car.js';

/** Runs gathered by the shape of their car, in the order in which shapes first come. */
export function byShape(runs: readonly TuningRun[]): [string, TuningRun[]][] {
  const shapes = new Map<string, TuningRun[]>();
  for (const run of runs) {
    const { name } = run.car.shape;
    const known = shapes.get(name);
    if (known) known.push(run);
    else shapes.set(name, [run]);
  }
  return [...shapes];
}
