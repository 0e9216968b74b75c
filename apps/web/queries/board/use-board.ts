import type { Board } from '@pullbook/contracts';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { queryText } from '../../client/query-text';
import { get } from '../../client/request';

export const boardQueryOptions = (collected: boolean) =>
  queryOptions({
    queryKey: ['board', collected],
    queryFn: ({ signal }) => get<Board>(`/board${queryText({ collected })}`, signal),
    placeholderData: (before) => before,
  });

/** Every visit that is in the house or booked; with `collected` those that have left, too. */
export const useBoard = (collected: boolean) => useQuery(boardQueryOptions(collected));
