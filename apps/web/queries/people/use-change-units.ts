import type { Me, Units } from '@pullbook/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { send } from '../../client/request';
import { useNotices } from '../../components/notices/notices';
import { meQueryOptions } from './use-me';

/** Switches the units that this person reads, everywhere at once; goes back visibly if the server refuses. */
export function useChangeUnits() {
  const client = useQueryClient();
  const notices = useNotices();
  const key = meQueryOptions().queryKey;
  return useMutation({
    mutationFn: (units: Units) => send<Me>('PATCH', '/me', { body: { units } }),
    onMutate: async (units) => {
      await client.cancelQueries({ queryKey: key });
      const before = client.getQueryData(key);
      client.setQueryData(key, (me) => (me === undefined ? me : { ...me, units }));
      return { before };
    },
    onError: (error, _units, held) => {
      if (held?.before !== undefined) client.setQueryData(key, held.before);
      notices.mind(`Units went back: ${error.message}`);
    },
    onSettled: () => client.invalidateQueries({ queryKey: key }),
  });
}
