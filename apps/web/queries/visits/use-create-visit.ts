import type { Visit, VisitNew } from '@pullbook/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useIntentKey } from '../../client/intent-key';
import { send } from '../../client/request';

export function useCreateVisit() {
  const client = useQueryClient();
  const intent = useIntentKey();
  return useMutation({
    mutationFn: (input: VisitNew) =>
      send<Visit>('POST', '/visits', { body: input, idempotencyKey: intent.keyFor(input) }),
    onSuccess: () => intent.done(),
    onSettled: () => {
      for (const root of ['visits', 'board']) void client.invalidateQueries({ queryKey: [root] });
    },
  });
}
