import { NotDrawableError } from '../errors.js';

/** Throws NotDrawableError unless `value` is null or a finite number of at least `least`. */
export function requireFigure(argument: string, value: number | null, least?: number): void {
  if (value === null) return;
  if (!Number.isFinite(value)) throw new NotDrawableError(argument, value, 'a finite number');
  if (least !== undefined && value < least) throw new NotDrawableError(argument, value, `at least ${least}`);
}
