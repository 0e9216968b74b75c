import type { Car, CarChange } from '@pullbook/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { send } from '../../client/request';
import { carQueryOptions } from './use-cars';

interface Change {
  readonly id: string;
  readonly revision: number;
  readonly change: (typeof CarChange)['_output'];
}

export function useChangeCar() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: ({ id, revision, change }: Change) =>
      send<Car>('PATCH', `/cars/${id}`, { body: change, ifMatch: revision }),
    onSuccess: (car) => client.setQueryData(carQueryOptions(car.id).queryKey, car),
    onSettled: () => {
      for (const root of ['cars', 'board', 'visits', 'next-pull']) {
        void client.invalidateQueries({ queryKey: [root] });
      }
    },
  });
}
