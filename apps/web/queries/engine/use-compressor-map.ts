import type { CarCompressorMap, CompressorMapNew } from '@pullbook/contracts';
import { queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { get, send, sendOnly } from '../../client/request';

const compressorMapQueryOptions = (carId: string) =>
  queryOptions({
    queryKey: ['cars', 'compressor-map', carId],
    queryFn: ({ signal }) => get<CarCompressorMap>(`/cars/${carId}/compressor-map`, signal),
  });

/** The map as it was entered; ask only where there is one. */
export const useCompressorMap = (carId: string, hasMap: boolean) =>
  useQuery({ ...compressorMapQueryOptions(carId), enabled: hasMap });

interface CarAsSeen {
  readonly carId: string;
  readonly revision: number;
}

function useRenewCars(): () => void {
  const client = useQueryClient();
  return () => {
    for (const root of ['cars', 'next-pull']) void client.invalidateQueries({ queryKey: [root] });
  };
}

export function useSetCompressorMap() {
  const renew = useRenewCars();
  return useMutation({
    mutationFn: ({ carId, revision, map }: CarAsSeen & { readonly map: CompressorMapNew }) =>
      send<CarCompressorMap>('PUT', `/cars/${carId}/compressor-map`, { body: map, ifMatch: revision }),
    onSettled: renew,
  });
}

export function useRemoveCompressorMap() {
  const renew = useRenewCars();
  return useMutation({
    mutationFn: ({ carId, revision }: CarAsSeen) =>
      sendOnly('DELETE', `/cars/${carId}/compressor-map`, { ifMatch: revision }),
    onSettled: renew,
  });
}
