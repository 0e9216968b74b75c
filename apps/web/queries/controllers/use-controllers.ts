import type { Controller, ControllerNew } from '@pullbook/contracts';
import { queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useIntentKey } from '../../client/intent-key';
import { get, send } from '../../client/request';

export const controllersQueryOptions = () =>
  queryOptions({
    queryKey: ['controllers'],
    queryFn: async ({ signal }) =>
      (await get<{ items: Controller[] }>('/controllers?limit=200', signal)).items,
  });

/** The kinds of controller that this workshop has described. */
export const useControllers = () => useQuery(controllersQueryOptions());

export function useCreateController() {
  const client = useQueryClient();
  const intent = useIntentKey();
  return useMutation({
    mutationFn: (input: ControllerNew) =>
      send<Controller>('POST', '/controllers', { body: input, idempotencyKey: intent.keyFor(input) }),
    onSuccess: () => intent.done(),
    onSettled: () => client.invalidateQueries({ queryKey: controllersQueryOptions().queryKey }),
  });
}

interface Change {
  readonly id: string;
  readonly revision: number;
  readonly change: ControllerNew;
}

export function useChangeController() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: ({ id, revision, change }: Change) =>
      send<Controller>('PATCH', `/controllers/${id}`, { body: change, ifMatch: revision }),
    onSettled: () => {
      for (const root of ['controllers', 'cars', 'next-pull']) {
        void client.invalidateQueries({ queryKey: [root] });
      }
    },
  });
}
