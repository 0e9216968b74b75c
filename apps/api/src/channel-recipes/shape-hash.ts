import type { LogShape } from '@pullbook/contracts';
import { shapeKey } from '@pullbook/tuning-math';
import { createHash } from 'node:crypto';

/** What headers and unit row of a log hash to: equal for logs of one shape alone. */
export function shapeHash(shape: LogShape): string {
  return createHash('sha256').update(shapeKey(shape)).digest('hex');
}
