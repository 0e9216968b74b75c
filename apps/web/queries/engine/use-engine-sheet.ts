import type { EngineSheet } from '@pullbook/contracts';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { get } from '../../client/request';

export const engineSheetQueryOptions = (carId: string) =>
  queryOptions({
    // Below `cars`: whatever changes a car changes what is reckoned from it.
    queryKey: ['cars', 'engine', carId],
    queryFn: ({ signal }) => get<EngineSheet>(`/cars/${carId}/engine`, signal),
  });

/** All that follows from a car's engine data. */
export const useEngineSheet = (carId: string) => useQuery(engineSheetQueryOptions(carId));
