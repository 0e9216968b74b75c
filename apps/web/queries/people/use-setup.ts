import type { Setup } from '@pullbook/contracts';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { get } from '../../client/request';

export const setupQueryOptions = () =>
  queryOptions({
    queryKey: ['setup'],
    queryFn: ({ signal }) => get<Setup>('/setup', signal),
    staleTime: 60_000,
  });

/** What a fresh installation still needs, and whether it is the demo. */
export const useSetup = () => useQuery(setupQueryOptions());
