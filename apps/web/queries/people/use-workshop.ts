import type { Workshop, WorkshopChange } from '@pullbook/contracts';
import { queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { get, send } from '../../client/request';

export const workshopQueryOptions = () =>
  queryOptions({ queryKey: ['workshop'], queryFn: ({ signal }) => get<Workshop>('/workshop', signal) });

/** The workshop's own settings. */
export const useWorkshop = () => useQuery(workshopQueryOptions());

interface Change {
  readonly revision: number;
  readonly change: (typeof WorkshopChange)['_output'];
}

export function useChangeWorkshop() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: ({ revision, change }: Change) =>
      send<Workshop>('PATCH', '/workshop', { body: change, ifMatch: revision }),
    onSettled: () => {
      void client.invalidateQueries({ queryKey: workshopQueryOptions().queryKey });
      void client.invalidateQueries({ queryKey: ['me'] });
    },
  });
}
