import type { Log } from '@pullbook/contracts';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { get } from '../../client/request';

export const logsQueryOptions = (sessionId: string) =>
  queryOptions({
    queryKey: ['logs', 'of-session', sessionId],
    queryFn: async ({ signal }) =>
      (await get<{ items: Omit<Log, 'traces'>[] }>(`/tuning-sessions/${sessionId}/logs`, signal)).items,
  });

/** The logs of one tuning session, without their traces. */
export const useLogs = (sessionId: string) => useQuery(logsQueryOptions(sessionId));

export const logQueryOptions = (id: string) =>
  queryOptions({ queryKey: ['logs', 'one', id], queryFn: ({ signal }) => get<Log>(`/logs/${id}`, signal) });
