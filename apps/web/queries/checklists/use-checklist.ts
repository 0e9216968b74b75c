import type { SignOffChecklist, SignOffChecklistChange } from '@pullbook/contracts';
import { queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { get, send } from '../../client/request';

export const checklistQueryOptions = () =>
  queryOptions({
    queryKey: ['checklist'],
    queryFn: ({ signal }) => get<SignOffChecklist>('/sign-off-checklist', signal),
  });

/** What every sign-off of this workshop asks for. */
export const useChecklist = () => useQuery(checklistQueryOptions());

interface Change {
  readonly revision: number;
  readonly items: SignOffChecklistChange['items'];
}

export function useChangeChecklist() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: ({ revision, items }: Change) =>
      send<SignOffChecklist>('PUT', '/sign-off-checklist', { body: { items }, ifMatch: revision }),
    onSuccess: (checklist) => client.setQueryData(checklistQueryOptions().queryKey, checklist),
    onSettled: () => {
      for (const root of ['checklist', 'sign-off', 'board'])
        void client.invalidateQueries({ queryKey: [root] });
    },
  });
}
