/** A pull with the gate hold that it was made at; null or left out where it was not written down. */
interface HeldPull {
  readonly usable: boolean;
  readonly holdPct?: number | null | undefined;
}

/** Controllers step their gate hold by a tenth of a point at least. */
const SAME_PCT = 0.01;

/**
 * The usable pulls that tell what duty does: those at the stored gate hold, or while none is stored at the hold of the
 * first pull. A raised hold overshoots, and its peak would be taken for the duty's. A pull without a hold counts.
 */
export function pullsAtBaseHold<P extends HeldPull>(pulls: readonly P[], storedHoldPct: number | null): P[] {
  const usable = pulls.filter((pull) => pull.usable);
  const baseHoldPct = baseHoldOf(usable, storedHoldPct);
  return usable.filter(({ holdPct = null }) => {
    if (holdPct === null) return true;
    return baseHoldPct !== null && Math.abs(holdPct - baseHoldPct) <= SAME_PCT;
  });
}

function baseHoldOf(usable: readonly HeldPull[], storedHoldPct: number | null): number | null {
  const isStoredPulled = usable.some(
    ({ holdPct }) => typeof holdPct === 'number' && Math.abs(holdPct - (storedHoldPct ?? NaN)) <= SAME_PCT,
  );
  return isStoredPulled ? storedHoldPct : (usable[0]?.holdPct ?? null);
}
