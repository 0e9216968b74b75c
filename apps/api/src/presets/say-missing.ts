import type { PresetStanding } from '@pullbook/tuning-math';

/** Codes whose sentence is told by the number of pulls in front of all others. */
const TOLD_BY_COUNT: readonly string[] = ['too-few-pulls', 'no-heat-soaked-pull'];

/**
 * What a preset lacks, as parts of one sentence: '2 more pulls, one of them heat-soaked' first, then whatever pulls
 * alone do not cure.
 */
export function sayMissing({ missing, proof }: PresetStanding, leastPulls: number): string[] {
  const codes: readonly string[] = missing.map(({ code }) => code);
  const isOnTest = codes.some((code) => TOLD_BY_COUNT.includes(code) || code === 'scatter-too-wide');
  const first = proof === null || !isOnTest ? null : sayCount(proof, leastPulls, codes);
  const others = missing.filter(({ code }) => first === null || !TOLD_BY_COUNT.includes(code));
  return [...(first === null ? [] : [first]), ...others.map(({ text }) => asPart(text))];
}

type Proof = NonNullable<PresetStanding['proof']>;

function sayCount(proof: Proof, leastPulls: number, codes: readonly string[]): string | null {
  const needed = Math.max(leastPulls, proof.pullsLikelyNeeded ?? 0) - proof.usablePulls;
  const isHeatMissing = codes.includes('no-heat-soaked-pull');
  const count = Math.max(needed, isHeatMissing ? 1 : 0);
  if (count <= 0) return null;
  // How many the scatter asks for is an estimate until it is known better.
  const about = needed > leastPulls - proof.usablePulls ? 'about ' : '';
  if (count === 1) return isHeatMissing ? '1 more pull, heat-soaked' : `${about}1 more pull`;
  return `${about}${count} more pulls${isHeatMissing ? ', one of them heat-soaked' : ''}`;
}

/** A sentence as a part of one: no capital, no full stop. */
export function asPart(sentence: string): string {
  return `${sentence.charAt(0).toLowerCase()}${sentence.slice(1)}`.replace(/\.$/, '');
}
