import type { Token, TokenMade } from '@pullbook/contracts';
import { queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useIntentKey } from '../../client/intent-key';
import { get, send, sendOnly } from '../../client/request';

export const tokensQueryOptions = () =>
  queryOptions({
    queryKey: ['tokens'],
    queryFn: async ({ signal }) => (await get<{ items: Token[] }>('/tokens', signal)).items,
  });

/** Tokens by which programs reach this workshop's records. */
export const useTokens = () => useQuery(tokensQueryOptions());

export function useMakeToken() {
  const client = useQueryClient();
  const intent = useIntentKey();
  return useMutation({
    mutationFn: (input: { name: string }) =>
      send<TokenMade>('POST', '/tokens', { body: input, idempotencyKey: intent.keyFor(input) }),
    onSuccess: () => intent.done(),
    onSettled: () => client.invalidateQueries({ queryKey: tokensQueryOptions().queryKey }),
  });
}

export function useRevokeToken() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (id: string) => sendOnly('DELETE', `/tokens/${id}`),
    onSettled: () => client.invalidateQueries({ queryKey: tokensQueryOptions().queryKey }),
  });
}
