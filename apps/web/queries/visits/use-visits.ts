import type { Page, Visit } from '@pullbook/contracts';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { queryText } from '../../client/query-text';
import { get } from '../../client/request';

export const visitQueryOptions = (id: string) =>
  queryOptions({
    queryKey: ['visits', 'one', id],
    queryFn: ({ signal }) => get<Visit>(`/visits/${id}`, signal),
  });

export const useVisit = (id: string) => useQuery(visitQueryOptions(id));

export const visitsOfCarQueryOptions = (carId: string) =>
  queryOptions({
    queryKey: ['visits', 'of-car', carId],
    queryFn: async ({ signal }) =>
      (await get<Page<Visit>>(`/visits${queryText({ carId, limit: 200 })}`, signal)).items,
  });

/** Every visit of one car. */
export const useVisitsOfCar = (carId: string) => useQuery(visitsOfCarQueryOptions(carId));
