import type { NextPull } from '@pullbook/contracts';

/**
 * A word of care when the duty set by hand lies further up than one step allows; null where all is well. The stored duty
 * of a car that came back is a fair first pull, as long as nothing on the car has changed.
 */
export function sayOverStep(
  dutyText: string,
  next: NextPull | undefined,
  lowestDutyPct: number,
): string | null {
  const duty = Number(dutyText.replace(',', '.'));
  if (next === undefined || dutyText.trim() === '' || !Number.isFinite(duty)) return null;
  const highest = next.highestDutyPct ?? lowestDutyPct;
  const furthest = highest + next.stepLimit;
  if (duty <= furthest) return null;
  const proven = next.basis.provenDutyPct ?? null;
  if (proven !== null && duty <= proven) {
    return `Nothing this high was pulled in this visit yet. ${proven} % was proven or signed off on this car in an earlier visit: pull it only if nothing on the car has changed since.`;
  }
  return `${duty} % is more than the ${next.stepLimit} points that one pull may go up. Not driven yet? Set ${furthest} % or less.`;
}
