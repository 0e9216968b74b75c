'use client';

import { useQueryClient, type QueryClient } from '@tanstack/react-query';
import { sayWhen } from '../time/say-when';
import { useLine } from './live';

export interface LineWords {
  readonly what: 'no line';
  /** ', as of today 14:27', or nothing where no answer was ever read. */
  readonly asOf: string;
}

/** That the line to the server is broken, and of when the figures in sight are; null while it stands. */
export function useLineWords(): LineWords | null {
  const { isLive, brokeAt } = useLine();
  const client = useQueryClient();
  if (isLive) return null;
  const at = brokeAt ?? oldestAnswer(client);
  return {
    what: 'no line',
    asOf: at === null ? '' : `, as of ${sayWhen(new Date(at).toISOString(), new Date())}`,
  };
}

/** When the oldest of the answers in sight was read: nothing on the screen is younger than it says. */
function oldestAnswer(client: QueryClient): number | null {
  const times = client
    .getQueryCache()
    .findAll({ type: 'active' })
    .filter(({ queryKey, state }) => queryKey[0] !== 'next-pull-here' && state.dataUpdatedAt > 0)
    .map(({ state }) => state.dataUpdatedAt);
  return times.length === 0 ? null : Math.min(...times);
}
