import type { SignOff, SignOffNew } from '@pullbook/contracts';
import { queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useIntentKey } from '../../client/intent-key';
import { get, send } from '../../client/request';

export const signOffQueryOptions = (visitId: string) =>
  queryOptions({
    queryKey: ['sign-off', visitId],
    queryFn: ({ signal }) => get<SignOff>(`/visits/${visitId}/sign-off`, signal),
  });

/** The checklist of a visit with what the data say; sealed once it is signed. */
export const useSignOff = (visitId: string) => useQuery(signOffQueryOptions(visitId));

export function useSeal(visitId: string) {
  const client = useQueryClient();
  const intent = useIntentKey();
  return useMutation({
    mutationFn: (input: SignOffNew) =>
      send<SignOff>('POST', `/visits/${visitId}/sign-off`, {
        body: input,
        idempotencyKey: intent.keyFor(input),
      }),
    onSuccess: (signOff) => {
      intent.done();
      client.setQueryData(signOffQueryOptions(visitId).queryKey, signOff);
    },
    onSettled: () => {
      for (const root of ['sign-off', 'visits', 'presets', 'board']) {
        void client.invalidateQueries({ queryKey: [root] });
      }
    },
  });
}
