/** A pull, and when somebody looked the car over after it and found nothing wrong; null where nobody did. */
export interface LookedAfter {
  readonly number: number;
  readonly foundSoundAt: Date | string | null | undefined;
}

/** Number of the last pull after which the car was looked over and found sound; null where it never was. */
export function foundSoundAfter(pulls: readonly LookedAfter[]): number | null {
  const marked = pulls.filter((pull) => (pull.foundSoundAt ?? null) !== null).map((pull) => pull.number);
  return marked.length === 0 ? null : Math.max(...marked);
}
