import type { LogSettings, PullSettings } from '@pullbook/contracts';
import { queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { get, send } from '../../client/request';

export const logSettingsQueryOptions = () =>
  queryOptions({
    queryKey: ['log-settings'],
    queryFn: ({ signal }) => get<LogSettings>('/log-settings', signal),
  });

/** What this workshop's log analysis holds to. */
export const useLogSettings = () => useQuery(logSettingsQueryOptions());

interface Change {
  readonly revision: number;
  readonly changes: Partial<PullSettings>;
}

export function useChangeLogSettings() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: ({ revision, changes }: Change) =>
      send<LogSettings>('PATCH', '/log-settings', { body: { changes }, ifMatch: revision }),
    onSettled: () => client.invalidateQueries({ queryKey: logSettingsQueryOptions().queryKey }),
  });
}
