import type { Pull } from '@pullbook/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { send } from '../../client/request';
import { useNotices } from '../../components/notices/notices';
import { pullsQueryOptions } from './use-pulls';

interface Void {
  readonly pull: Pull;
  readonly reason: string;
}

/** Takes a pull out of the reckoning with a reason; it stays readable, and comes back visibly if refused. */
export function useVoidPull() {
  const client = useQueryClient();
  const notices = useNotices();
  const keyOf = (pull: Pull) => pullsQueryOptions(pull.tuningSessionId, pull.presetId).queryKey;
  return useMutation({
    mutationFn: ({ pull, reason }: Void) =>
      send<Pull>('POST', `/pulls/${pull.id}/void`, { body: { reason } }),
    onMutate: async ({ pull, reason }) => {
      await client.cancelQueries({ queryKey: keyOf(pull) });
      const before = client.getQueryData(keyOf(pull));
      client.setQueryData(keyOf(pull), (all) =>
        all?.map((one) =>
          one.id === pull.id ? { ...one, voidedAt: new Date().toISOString(), voidReason: reason } : one,
        ),
      );
      return { before };
    },
    onError: (error, { pull }, held) => {
      if (held?.before !== undefined) client.setQueryData(keyOf(pull), held.before);
      notices.mind(`Pull ${pull.number} is not void. ${error.message}`);
    },
    onSettled: () => {
      for (const root of ['pulls', 'next-pull', 'presets', 'board']) {
        void client.invalidateQueries({ queryKey: [root] });
      }
    },
  });
}
