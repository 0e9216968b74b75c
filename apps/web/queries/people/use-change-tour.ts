import type { Me } from '@pullbook/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { send } from '../../client/request';
import { meQueryOptions } from './use-me';

/** Moves this person's first tour on, ends it for good (null) or starts it again (0); kept with the person. */
export function useChangeTour() {
  const client = useQueryClient();
  const key = meQueryOptions().queryKey;
  return useMutation({
    mutationFn: (tourStep: number | null) => send<Me>('PATCH', '/me', { body: { tourStep } }),
    // One after the other, and shown at once: an answer to an earlier step does not lead back.
    scope: { id: 'first-tour' },
    onMutate: (tourStep) => client.setQueryData(key, (me) => (me === undefined ? me : { ...me, tourStep })),
    onError: () => client.invalidateQueries({ queryKey: key }),
  });
}
