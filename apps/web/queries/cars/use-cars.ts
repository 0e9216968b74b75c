import type { Car, Page } from '@pullbook/contracts';
import { infiniteQueryOptions, queryOptions, useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { queryText } from '../../client/query-text';
import { get } from '../../client/request';

export interface CarFilter {
  readonly q?: string;
  readonly customerId?: string;
}

export const carsQueryOptions = (filter: CarFilter) =>
  infiniteQueryOptions({
    queryKey: ['cars', 'list', filter],
    queryFn: ({ signal, pageParam }) =>
      get<Page<Car>>(`/cars${queryText({ ...filter, cursor: pageParam, limit: 50 })}`, signal),
    initialPageParam: '',
    getNextPageParam: (last) => last.nextCursor ?? undefined,
    placeholderData: (before) => before,
  });

/** Cars by plate, model or VIN, or those of one customer. */
export const useCars = (filter: CarFilter) => useInfiniteQuery(carsQueryOptions(filter));

export const carQueryOptions = (id: string) =>
  queryOptions({ queryKey: ['cars', 'one', id], queryFn: ({ signal }) => get<Car>(`/cars/${id}`, signal) });

export const useCar = (id: string) => useQuery(carQueryOptions(id));
