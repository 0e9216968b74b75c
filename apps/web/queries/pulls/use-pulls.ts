import type { Pull } from '@pullbook/contracts';
import { queryOptions, useQueries } from '@tanstack/react-query';
import { get } from '../../client/request';
import { pullsSeen, type SeenPull } from '../../offline/pulls-seen';
import { useOutbox } from '../../offline/use-outbox';

export const pullsQueryOptions = (sessionId: string, presetId: string) =>
  queryOptions({
    queryKey: ['pulls', sessionId, presetId],
    queryFn: async ({ signal }) =>
      (await get<{ items: Pull[] }>(`/tuning-sessions/${sessionId}/pulls?presetId=${presetId}`, signal))
        .items,
  });

interface PullsOfVisit {
  readonly pulls: readonly SeenPull[];
  readonly isPending: boolean;
  readonly error: Error | null;
}

/**
 * All pulls of one preset in a visit, oldest first, over all of its tuning sessions, with those that this device has
 * written down and not sent yet.
 */
export function usePulls(sessionIds: readonly string[], presetId: string): PullsOfVisit {
  const outbox = useOutbox();
  const told = useQueries({
    queries: sessionIds.map((sessionId) => pullsQueryOptions(sessionId, presetId)),
    combine: (answers) => ({
      pulls: answers.flatMap((one) => one.data ?? []),
      isPending: answers.some((one) => one.isPending),
      error: answers.find((one) => one.data === undefined && one.error !== null)?.error ?? null,
    }),
  });
  const belongs = (pull: Pull) => pull.presetId === presetId && sessionIds.includes(pull.tuningSessionId);
  return { ...told, pulls: pullsSeen(told.pulls, outbox, belongs) };
}

/** Everything that was pulled in these tuning sessions, of all presets, in the order of the pulls of each preset. */
export function usePullsOfSessions(sessionIds: readonly string[]): PullsOfVisit {
  return useQueries({
    queries: sessionIds.map((sessionId) =>
      queryOptions({
        queryKey: ['pulls', sessionId],
        queryFn: async ({ signal }) =>
          (await get<{ items: Pull[] }>(`/tuning-sessions/${sessionId}/pulls`, signal)).items,
      }),
    ),
    combine: (answers) => ({
      pulls: answers.flatMap((one) => one.data ?? []).sort((a, b) => a.number - b.number),
      isPending: answers.some((one) => one.isPending),
      error: answers.find((one) => one.error !== null)?.error ?? null,
    }),
  });
}
