import type { Preset, PresetChange } from '@pullbook/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { send } from '../../client/request';
import { presetsQueryOptions } from './use-presets';

interface Change {
  readonly preset: Preset;
  readonly change: PresetChange;
}

/** Writes a new revision of a preset; the server refuses if somebody else has written one meanwhile. */
export function useChangePreset() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: ({ preset, change }: Change) =>
      send<Preset>('PATCH', `/presets/${preset.id}`, { body: change, ifMatch: preset.revision }),
    onSuccess: (preset) =>
      client.setQueryData(presetsQueryOptions(preset.carId).queryKey, (all) =>
        all?.map((one) => (one.id === preset.id ? preset : one)),
      ),
    onSettled: () => {
      for (const root of ['presets', 'next-pull', 'board', 'sign-off']) {
        void client.invalidateQueries({ queryKey: [root] });
      }
    },
  });
}
