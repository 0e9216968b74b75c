import type { Log, WaitingLogList } from '@pullbook/contracts';
import { queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { dropUpload } from '../../client/drop-upload';
import { useIntentKey } from '../../client/intent-key';
import { get, send } from '../../client/request';

export const waitingLogsQueryOptions = () =>
  queryOptions({
    queryKey: ['logs', 'waiting'],
    queryFn: ({ signal }) => get<WaitingLogList>('/uploads', signal),
  });

/** Files that came in and belong to no tuning session yet, and the sessions that they may belong to. */
export const useWaitingLogs = () => useQuery(waitingLogsQueryOptions());

interface Assignment {
  readonly uploadId: string;
  readonly tuningSessionId: string;
}

/** Makes a waiting file a log of a tuning session. */
export function useAssignLog() {
  const client = useQueryClient();
  const intent = useIntentKey();
  return useMutation({
    mutationFn: ({ uploadId, tuningSessionId }: Assignment) =>
      send<Log>('POST', `/tuning-sessions/${tuningSessionId}/logs/from-upload`, {
        body: { uploadId },
        idempotencyKey: intent.keyFor({ uploadId, tuningSessionId }),
      }),
    onSuccess: () => intent.done(),
    onSettled: () => client.invalidateQueries({ queryKey: ['logs'] }),
  });
}

/** Throws a waiting file away. */
export function useDropWaiting() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: dropUpload,
    onSettled: () => client.invalidateQueries({ queryKey: ['logs', 'waiting'] }),
  });
}
