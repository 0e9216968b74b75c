import type { Pull } from '@pullbook/contracts';
import { queryOptions, useQueries } from '@tanstack/react-query';
import { get } from '../../client/request';

export const pullsQueryOptions = (sessionId: string, presetId: string) =>
  queryOptions({
    queryKey: ['pulls', sessionId, presetId],
    queryFn: async ({ signal }) =>
      (await get<{ items: Pull[] }>(`/tuning-sessions/${sessionId}/pulls?presetId=${presetId}`, signal))
        .items,
  });

interface PullsOfVisit {
  readonly pulls: readonly Pull[];
  readonly isPending: boolean;
  readonly error: Error | null;
}

/** All pulls of one preset in a visit, oldest first, over all of its tuning sessions. */
export function usePulls(sessionIds: readonly string[], presetId: string): PullsOfVisit {
  return useQueries({
    queries: sessionIds.map((sessionId) => pullsQueryOptions(sessionId, presetId)),
    combine: (answers) => ({
      pulls: answers.flatMap((one) => one.data ?? []).sort((a, b) => a.number - b.number),
      isPending: answers.some((one) => one.isPending),
      error: answers.find((one) => one.error !== null)?.error ?? null,
    }),
  });
}
