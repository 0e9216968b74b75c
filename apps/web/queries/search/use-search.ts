import type { SearchAnswer } from '@pullbook/contracts';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { queryText } from '../../client/query-text';
import { get } from '../../client/request';

export const searchQueryOptions = (q: string) =>
  queryOptions({
    queryKey: ['search', q],
    queryFn: ({ signal }) => get<SearchAnswer>(`/search${queryText({ q })}`, signal),
    enabled: q !== '',
    placeholderData: (before) => (q === '' ? undefined : before),
  });

/** Visits, cars and customers that match what was typed, best first. */
export const useSearch = (q: string) => useQuery(searchQueryOptions(q));
