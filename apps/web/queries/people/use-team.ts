import type { Member, MemberChange, MemberNew } from '@pullbook/contracts';
import { queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useIntentKey } from '../../client/intent-key';
import { get, send } from '../../client/request';

export const teamQueryOptions = () =>
  queryOptions({
    queryKey: ['team'],
    queryFn: async ({ signal }) => (await get<{ items: Member[] }>('/team', signal)).items,
  });

/** Everybody who works here, and worked here. */
export const useTeam = () => useQuery(teamQueryOptions());

export function useAddMember() {
  const client = useQueryClient();
  const intent = useIntentKey();
  return useMutation({
    mutationFn: (input: (typeof MemberNew)['_output']) =>
      send<Member>('POST', '/team', { body: input, idempotencyKey: intent.keyFor(input) }),
    onSuccess: () => intent.done(),
    onSettled: () => client.invalidateQueries({ queryKey: teamQueryOptions().queryKey }),
  });
}

interface Change {
  readonly id: string;
  readonly revision: number;
  readonly change: (typeof MemberChange)['_output'];
}

export function useChangeMember() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: ({ id, revision, change }: Change) =>
      send<Member>('PATCH', `/team/${id}`, { body: change, ifMatch: revision }),
    onSettled: () => client.invalidateQueries({ queryKey: teamQueryOptions().queryKey }),
  });
}
