import type { Customer, CustomerChange } from '@pullbook/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { send } from '../../client/request';
import { customerQueryOptions } from './use-customers';

interface Change {
  readonly id: string;
  readonly revision: number;
  readonly change: (typeof CustomerChange)['_output'];
}

export function useChangeCustomer() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: ({ id, revision, change }: Change) =>
      send<Customer>('PATCH', `/customers/${id}`, { body: change, ifMatch: revision }),
    onSuccess: (customer) => client.setQueryData(customerQueryOptions(customer.id).queryKey, customer),
    onSettled: () => client.invalidateQueries({ queryKey: ['customers'] }),
  });
}
