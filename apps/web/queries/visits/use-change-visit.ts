import type { Visit, VisitChange } from '@pullbook/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { send } from '../../client/request';
import { visitQueryOptions } from './use-visits';

interface Change {
  readonly id: string;
  readonly revision: number;
  readonly change: (typeof VisitChange)['_output'];
}

export function useChangeVisit() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: ({ id, revision, change }: Change) =>
      send<Visit>('PATCH', `/visits/${id}`, { body: change, ifMatch: revision }),
    onSuccess: (visit) => client.setQueryData(visitQueryOptions(visit.id).queryKey, visit),
    onSettled: () => {
      for (const root of ['visits', 'board']) void client.invalidateQueries({ queryKey: [root] });
    },
  });
}
