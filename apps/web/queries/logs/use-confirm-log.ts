import type { LogConfirm, Pull } from '@pullbook/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useIntentKey } from '../../client/intent-key';
import { send } from '../../client/request';

interface Confirm {
  readonly logId: string;
  readonly input: LogConfirm;
}

/** Takes found pulls of a log into the book, with the duty that was set for them. */
export function useConfirmLog() {
  const client = useQueryClient();
  const intent = useIntentKey();
  return useMutation({
    mutationFn: ({ logId, input }: Confirm) =>
      send<{ items: Pull[] }>('POST', `/logs/${logId}/pulls`, {
        body: input,
        idempotencyKey: intent.keyFor({ logId, input }),
      }),
    onSuccess: () => intent.done(),
    onSettled: () => {
      for (const root of ['logs', 'pulls', 'next-pull', 'presets', 'board', 'visits']) {
        void client.invalidateQueries({ queryKey: [root] });
      }
    },
  });
}
