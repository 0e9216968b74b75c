import type { NextPull, Preset } from '@pullbook/contracts';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { get } from '../../client/request';

export const nextPullQueryOptions = (sessionId: string, { id, revision }: Preset) =>
  queryOptions({
    // By revision: after a change of target or ceiling the old answer is no answer.
    queryKey: ['next-pull', sessionId, id, revision],
    queryFn: ({ signal }) => get<NextPull>(`/tuning-sessions/${sessionId}/next-pull?presetId=${id}`, signal),
    staleTime: 0,
  });

/** What to drive next for this preset, or what is missing before anything may be driven. */
export const useNextPull = (sessionId: string, preset: Preset) =>
  useQuery(nextPullQueryOptions(sessionId, preset));
