import { adviseDuty, predictNextPeak } from '@pullbook/tuning-math';
import { HAND_METHODS } from './hand-methods.js';
import type { Method } from './tune-car.js';

export const OURS = 'Pullbook';

const advice: Method = (request) => {
  const { action, duty, reasons } = adviseDuty(request);
  const code = reasons[0]?.code;
  if (duty === null) return { action, duty, code };
  const quantilesKpa = (shares: readonly number[]): number[] => predictNextPeak(request, { duty, shares });
  return { action, duty, code, quantilesKpa };
};

/** Our advice and what people do by hand, by name: a name can be sent to another thread, a function cannot. */
export const METHODS: ReadonlyMap<string, Method> = new Map([
  [OURS, advice],
  ...HAND_METHODS.map(({ name, method }) => [name, method] as const),
]);
