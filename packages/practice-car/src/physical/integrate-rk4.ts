/** Writes the rates of change of `state` at `timeS` into `ratesOut`. */
export type Derivative = (timeS: number, state: Float64Array, ratesOut: Float64Array) => void;

/** One step forward in time, in place. */
export type Stepper = (timeS: number, stepS: number, state: Float64Array) => void;

/**
 * A stepper that advances a system of ordinary differential equations by the classical Runge-Kutta method.
 *
 * Error of a smooth problem falls with the fourth power of the step. The stepper owns its working arrays, so one
 * stepper serves one simulation.
 *
 * @param size number of state variables
 * @param derivative right-hand side
 * Source: Hairer, Norsett and Wanner, Solving Ordinary Differential Equations I, section II.1.
 */
export function rungeKutta4(size: number, derivative: Derivative): Stepper {
  const [k1, k2, k3, k4] = [0, 1, 2, 3].map(() => new Float64Array(size)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const trial = new Float64Array(size);
  const reach = (state: Float64Array, rates: Float64Array, stepS: number): void => {
    for (let i = 0; i < size; i++) trial[i] = (state[i] ?? 0) + stepS * (rates[i] ?? 0);
  };
  return (timeS, stepS, state) => {
    derivative(timeS, state, k1);
    reach(state, k1, stepS / 2);
    derivative(timeS + stepS / 2, trial, k2);
    reach(state, k2, stepS / 2);
    derivative(timeS + stepS / 2, trial, k3);
    reach(state, k3, stepS);
    derivative(timeS + stepS, trial, k4);
    for (let i = 0; i < size; i++) {
      const sum = (k1[i] ?? 0) + 2 * (k2[i] ?? 0) + 2 * (k3[i] ?? 0) + (k4[i] ?? 0);
      state[i] = (state[i] ?? 0) + (stepS / 6) * sum;
    }
  };
}
