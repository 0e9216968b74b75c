import type { Me } from '@pullbook/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { send } from '../../client/request';
import { meQueryOptions } from './use-me';

const mutationKey = ['first-tour'];

/** Moves this person's first tour on, ends it for good (null) or starts it again (0); kept with the person. */
export function useChangeTour() {
  const client = useQueryClient();
  const key = meQueryOptions().queryKey;
  return useMutation({
    mutationKey,
    // At once, whatever is still under way, and even if the page is loaded anew: an end that waited behind a step was
    // lost with the page. In which order they arrive does not matter to the server.
    mutationFn: (tourStep: number | null) =>
      send<Me>('PATCH', '/me', { body: { tourStep }, keepalive: true }),
    onMutate: async (tourStep) => {
      // What was asked before would come back with the step before.
      await client.cancelQueries({ queryKey: key });
      client.setQueryData(key, (me) => (me === undefined ? me : { ...me, tourStep }));
    },
    onSettled: () => {
      const isLast = client.isMutating({ mutationKey }) === 1;
      return isLast ? client.invalidateQueries({ queryKey: key }) : undefined;
    },
  });
}
