import type { ChannelRecipe, ChannelRecipeChange, ChannelRecipeNew } from '@pullbook/contracts';
import { queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useIntentKey } from '../../client/intent-key';
import { get, send, sendOnly } from '../../client/request';

export const channelRecipesQueryOptions = () =>
  queryOptions({
    queryKey: ['channel-recipes'],
    queryFn: async ({ signal }) => (await get<{ items: ChannelRecipe[] }>('/channel-recipes', signal)).items,
  });

/** How this workshop reads the logs of each logger. */
export const useChannelRecipes = () => useQuery(channelRecipesQueryOptions());

function useStale() {
  const client = useQueryClient();
  return () => client.invalidateQueries({ queryKey: channelRecipesQueryOptions().queryKey });
}

export function useCreateRecipe() {
  const stale = useStale();
  const intent = useIntentKey();
  return useMutation({
    mutationFn: (input: ChannelRecipeNew) =>
      send<ChannelRecipe>('POST', '/channel-recipes', { body: input, idempotencyKey: intent.keyFor(input) }),
    onSuccess: () => intent.done(),
    onSettled: stale,
  });
}

interface Change {
  readonly id: string;
  readonly revision: number;
  readonly change: ChannelRecipeChange;
}

export function useChangeRecipe() {
  const stale = useStale();
  return useMutation({
    mutationFn: ({ id, revision, change }: Change) =>
      send<ChannelRecipe>('PATCH', `/channel-recipes/${id}`, { body: change, ifMatch: revision }),
    onSettled: stale,
  });
}

export function useDeleteRecipe() {
  const stale = useStale();
  return useMutation({
    mutationFn: ({ id, revision }: Pick<Change, 'id' | 'revision'>) =>
      sendOnly('DELETE', `/channel-recipes/${id}`, { ifMatch: revision }),
    onSettled: stale,
  });
}
