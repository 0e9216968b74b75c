import type { Customer, Page } from '@pullbook/contracts';
import { infiniteQueryOptions, queryOptions, useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { queryText } from '../../client/query-text';
import { get } from '../../client/request';

export const customersQueryOptions = (q: string) =>
  infiniteQueryOptions({
    queryKey: ['customers', 'list', q],
    queryFn: ({ signal, pageParam }) =>
      get<Page<Customer>>(`/customers${queryText({ q, cursor: pageParam, limit: 50 })}`, signal),
    initialPageParam: '',
    getNextPageParam: (last) => last.nextCursor ?? undefined,
    placeholderData: (before) => before,
  });

/** Customers whose name, phone or email has the searched text in it. */
export const useCustomers = (q: string) => useInfiniteQuery(customersQueryOptions(q));

export const customerQueryOptions = (id: string) =>
  queryOptions({
    queryKey: ['customers', 'one', id],
    queryFn: ({ signal }) => get<Customer>(`/customers/${id}`, signal),
  });

export const useCustomer = (id: string) => useQuery(customerQueryOptions(id));
