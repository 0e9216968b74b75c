import { NextPull } from '@pullbook/contracts';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { get } from '../../client/request';

export const nextPullQueryOptions = (sessionId: string, presetId: string) =>
  queryOptions({
    queryKey: ['next-pull', sessionId, presetId],
    queryFn: ({ signal }) =>
      get(`/tuning-sessions/${sessionId}/next-pull?presetId=${presetId}`, NextPull, signal),
    staleTime: 0,
  });

/** What to drive next for this preset, or what is missing before anything may be driven. */
export const useNextPull = (sessionId: string, presetId: string) =>
  useQuery(nextPullQueryOptions(sessionId, presetId));
