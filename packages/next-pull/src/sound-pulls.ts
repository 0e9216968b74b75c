import { foundSoundAfter, type LookedAfter } from './found-sound-after.js';

/**
 * How many of the pulls that an advice rests on were made when the car was found sound, as the tuning math is told. A look
 * at the car after a pull that does not count there, such as one at another gate hold, speaks for those before it as well.
 *
 * @param pulls all standing pulls of the preset in the visit
 * @param counted those that the advice rests on
 */
export function soundPulls(
  pulls: readonly LookedAfter[],
  counted: ReadonlyArray<Pick<LookedAfter, 'number'>>,
): { readonly soundPulls?: number } {
  const after = foundSoundAfter(pulls);
  const count = after === null ? 0 : counted.filter((pull) => pull.number <= after).length;
  return count === 0 ? {} : { soundPulls: count };
}
