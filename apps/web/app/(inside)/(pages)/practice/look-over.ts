import type { TakenPull } from '../../../../practice/practice-question';
import type { Practice } from './practice';

/**
 * A look at the car after the last pull: a fault that has shown itself is found, and ends it; otherwise nothing wrong is
 * found, and the advice goes on.
 */
export function lookOver(pulls: readonly TakenPull[], now: Date): Partial<Practice> {
  if (pulls.some((pull) => pull.showsFault)) return { ending: { kind: 'stop', because: 'fault' } };
  const last = pulls.length - 1;
  const foundSoundAt = now.toISOString();
  return { pulls: pulls.map((pull, index) => (index === last ? { ...pull, foundSoundAt } : pull)) };
}
