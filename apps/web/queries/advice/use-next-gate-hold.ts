import type { NextGateHold, Preset } from '@pullbook/contracts';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { get } from '../../client/request';

export const nextGateHoldQueryOptions = (sessionId: string, { id, revision }: Preset) =>
  queryOptions({
    // Under the same root as the next duty: whatever makes that one stale makes this one stale.
    queryKey: ['next-pull', 'gate-hold', sessionId, id, revision],
    queryFn: ({ signal }) =>
      get<NextGateHold>(`/tuning-sessions/${sessionId}/next-gate-hold?presetId=${id}`, signal),
    staleTime: 0,
  });

/** What gate hold to drive next for this preset, once its duty is kept. */
export const useNextGateHold = (sessionId: string, preset: Preset) =>
  useQuery(nextGateHoldQueryOptions(sessionId, preset));
