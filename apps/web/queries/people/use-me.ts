import type { Me } from '@pullbook/contracts';
import { queryOptions, useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { get } from '../../client/request';

export const fetchMe = (signal?: AbortSignal) => get<Me>('/me', signal);

export const meQueryOptions = () =>
  queryOptions({
    queryKey: ['me'],
    queryFn: ({ signal }) => fetchMe(signal),
    staleTime: 60_000,
  });

/** Who is signed in; an error of status 401 where nobody is. */
export const useMe = () => useQuery(meQueryOptions());

/** Who is signed in, for screens inside the shell, which has asked before. */
export const useSignedInMe = (): Me => useSuspenseQuery(meQueryOptions()).data;
