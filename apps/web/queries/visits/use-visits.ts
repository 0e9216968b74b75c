import { pageOf, Visit } from '@pullbook/contracts';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { queryText } from '../../client/query-text';
import { get } from '../../client/request';

const VisitPage = pageOf(Visit);

export const visitQueryOptions = (id: string) =>
  queryOptions({
    queryKey: ['visits', 'one', id],
    queryFn: ({ signal }) => get(`/visits/${id}`, Visit, signal),
  });

export const useVisit = (id: string) => useQuery(visitQueryOptions(id));

export const visitsOfCarQueryOptions = (carId: string) =>
  queryOptions({
    queryKey: ['visits', 'of-car', carId],
    queryFn: async ({ signal }) =>
      (await get(`/visits${queryText({ carId, limit: 200 })}`, VisitPage, signal)).items,
  });

/** Every visit of one car. */
export const useVisitsOfCar = (carId: string) => useQuery(visitsOfCarQueryOptions(carId));
