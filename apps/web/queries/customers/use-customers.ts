import { Customer, pageOf } from '@pullbook/contracts';
import { infiniteQueryOptions, queryOptions, useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { queryText } from '../../client/query-text';
import { get } from '../../client/request';

const CustomerPage = pageOf(Customer);

export const customersQueryOptions = (q: string) =>
  infiniteQueryOptions({
    queryKey: ['customers', 'list', q],
    queryFn: ({ signal, pageParam }) =>
      get(`/customers${queryText({ q, cursor: pageParam, limit: 50 })}`, CustomerPage, signal),
    initialPageParam: '',
    getNextPageParam: (last) => last.nextCursor ?? undefined,
    placeholderData: (before) => before,
  });

/** Customers whose name, phone or email has the searched text in it. */
export const useCustomers = (q: string) => useInfiniteQuery(customersQueryOptions(q));

export const customerQueryOptions = (id: string) =>
  queryOptions({
    queryKey: ['customers', 'one', id],
    queryFn: ({ signal }) => get(`/customers/${id}`, Customer, signal),
  });

export const useCustomer = (id: string) => useQuery(customerQueryOptions(id));
