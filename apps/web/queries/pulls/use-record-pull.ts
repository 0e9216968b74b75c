import type { Pull, PullNew } from '@pullbook/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { NoAnswerError } from '../../client/problem-error';
import { useIntentKey } from '../../client/intent-key';
import { send } from '../../client/request';
import { pullsQueryOptions } from './use-pulls';

const tries = 3;

/** Writes a pull into the book; a lost answer is asked for again with the same key, so it is never doubled. */
export function useRecordPull(sessionId: string) {
  const client = useQueryClient();
  const intent = useIntentKey();
  return useMutation({
    mutationFn: (input: PullNew) =>
      send<Pull>('POST', `/tuning-sessions/${sessionId}/pulls`, {
        body: input,
        idempotencyKey: intent.keyFor(input),
      }),
    retry: (count, error) => count < tries && error instanceof NoAnswerError,
    onSuccess: (pull) => {
      intent.done();
      client.setQueryData(pullsQueryOptions(sessionId, pull.presetId).queryKey, (all) =>
        all === undefined || all.some((one) => one.id === pull.id) ? all : [...all, pull],
      );
    },
    onSettled: () => {
      for (const root of ['pulls', 'next-pull', 'presets', 'board', 'visits']) {
        void client.invalidateQueries({ queryKey: [root] });
      }
    },
  });
}
