import type { Preset, PresetNew } from '@pullbook/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useIntentKey } from '../../client/intent-key';
import { send } from '../../client/request';

export function useCreatePreset(carId: string) {
  const client = useQueryClient();
  const intent = useIntentKey();
  return useMutation({
    mutationFn: (input: PresetNew) =>
      send<Preset>('POST', `/cars/${carId}/presets`, { body: input, idempotencyKey: intent.keyFor(input) }),
    onSuccess: () => intent.done(),
    onSettled: () => {
      for (const root of ['presets', 'board']) void client.invalidateQueries({ queryKey: [root] });
    },
  });
}
