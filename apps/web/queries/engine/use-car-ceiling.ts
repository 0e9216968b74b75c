import type { CarCeiling } from '@pullbook/contracts';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { get } from '../../client/request';

const carCeilingQueryOptions = (carId: string) =>
  queryOptions({
    queryKey: ['cars', 'ceiling', carId],
    queryFn: ({ signal }) => get<CarCeiling>(`/cars/${carId}/ceiling`, signal),
  });

/** How high a ceiling of a car may stand, and which limit says so. */
export const useCarCeiling = (carId: string) => useQuery(carCeilingQueryOptions(carId));
