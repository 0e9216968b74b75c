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
    // At once, and without network too: what the server did not hear of is asked again at the next visit.
    onMutate: (tourStep) => client.setQueryData(key, (me) => (me === undefined ? me : { ...me, tourStep })),
    onSuccess: (me) => client.setQueryData(key, me),
  });
}
