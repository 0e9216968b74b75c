import type { Log, LogAnalyse } from '@pullbook/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useIntentKey } from '../../client/intent-key';
import { send } from '../../client/request';

interface Analyse {
  readonly logId: string;
  readonly input: LogAnalyse;
}

/** Computes a log anew; the result is its newest version. */
export function useAnalyseLog() {
  const client = useQueryClient();
  const intent = useIntentKey();
  return useMutation({
    mutationFn: ({ logId, input }: Analyse) =>
      send<Log>('POST', `/logs/${logId}/analyse`, {
        body: input,
        idempotencyKey: intent.keyFor({ logId, input }),
      }),
    onSuccess: () => intent.done(),
    onSettled: () => client.invalidateQueries({ queryKey: ['logs'] }),
  });
}
