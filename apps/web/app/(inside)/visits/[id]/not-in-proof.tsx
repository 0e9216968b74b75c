'use client';

import type { SeenPull } from '../../../../offline/pulls-seen';
import { useUnsent } from '../../../../offline/use-outbox';

/** What the line above does not count yet, since only this device knows of it. */
export function NotInProof({ pulls }: Readonly<{ pulls: readonly SeenPull[] }>) {
  const unsent = useUnsent();
  const isVoidedHere = ({ id }: SeenPull) => unsent.some(({ shows }) => shows.voided?.pullId === id);
  const pullCount = pulls.filter((pull) => pull.unsent === true && pull.voidedAt === null).length;
  const voidCount = pulls.filter((pull) => pull.unsent !== true && isVoidedHere(pull)).length;
  const isSoundHere = unsent.some(({ shows }) => pulls.some(({ id }) => shows.foundSound?.pullId === id));
  if (pullCount + voidCount === 0 && !isSoundHere) return null;
  const parts = [
    ...(pullCount === 0 ? [] : [`${pullCount} ${pullCount === 1 ? 'pull' : 'pulls'}`]),
    ...(voidCount === 0 ? [] : [`the voiding of ${voidCount}`]),
    ...(isSoundHere ? ['the look at the car'] : []),
  ];
  return (
    <p className="small">
      <span aria-hidden="true">◐ </span>
      <b>Not in this yet:</b> {parts.join(' and ')} not sent from this device. The advice counts them already.
    </p>
  );
}
