import type { TraceAnswer } from '@pullbook/contracts';
import { useQuery } from '@tanstack/react-query';
import { get } from '../../client/request';

const ASK_AGAIN_MS = 500;

/** What a log's traces are made of; asks again while they are being made. */
export const useTraceIndex = (logId: string) =>
  useQuery({
    queryKey: ['logs', 'traces', logId],
    queryFn: ({ signal }) => get<TraceAnswer>(`/logs/${logId}/traces`, signal),
    refetchInterval: ({ state }) => (state.data?.state === 'building' ? ASK_AGAIN_MS : false),
  });
