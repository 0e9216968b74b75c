import { adviseDuty } from '@pullbook/tuning-math';
import { HAND_METHODS } from './hand-methods.js';
import type { Method } from './tune-car.js';

export const OURS = 'Pullbook';

const advice: Method = (request) => {
  const { action, duty, prediction, reasons } = adviseDuty(request);
  return { action, duty, prediction, code: reasons[0]?.code };
};

/** Our advice and what people do by hand, by name: a name can be sent to another thread, a function cannot. */
export const METHODS: ReadonlyMap<string, Method> = new Map([
  [OURS, advice],
  ...HAND_METHODS.map(({ name, method }) => [name, method] as const),
]);
