import type { NextCorrection, Preset } from '@pullbook/contracts';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { get } from '../../client/request';

export const nextCorrectionQueryOptions = (sessionId: string, { id, revision }: Preset) =>
  queryOptions({
    queryKey: ['next-pull', 'correction', sessionId, id, revision],
    queryFn: ({ signal }) =>
      get<NextCorrection>(`/tuning-sessions/${sessionId}/next-correction?presetId=${id}`, signal),
    staleTime: 0,
  });

/** What the closed-loop logs of this preset say of its correction strength. */
export const useNextCorrection = (sessionId: string, preset: Preset) =>
  useQuery(nextCorrectionQueryOptions(sessionId, preset));
