import { Car, pageOf } from '@pullbook/contracts';
import { infiniteQueryOptions, queryOptions, useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { queryText } from '../../client/query-text';
import { get } from '../../client/request';

const CarPage = pageOf(Car);

export interface CarFilter {
  readonly q?: string;
  readonly customerId?: string;
}

export const carsQueryOptions = (filter: CarFilter) =>
  infiniteQueryOptions({
    queryKey: ['cars', 'list', filter],
    queryFn: ({ signal, pageParam }) =>
      get(`/cars${queryText({ ...filter, cursor: pageParam, limit: 50 })}`, CarPage, signal),
    initialPageParam: '',
    getNextPageParam: (last) => last.nextCursor ?? undefined,
    placeholderData: (before) => before,
  });

/** Cars by plate, model or VIN, or those of one customer. */
export const useCars = (filter: CarFilter) => useInfiniteQuery(carsQueryOptions(filter));

export const carQueryOptions = (id: string) =>
  queryOptions({ queryKey: ['cars', 'one', id], queryFn: ({ signal }) => get(`/cars/${id}`, Car, signal) });

export const useCar = (id: string) => useQuery(carQueryOptions(id));
