import type { Preset, TuningSession } from '@pullbook/contracts';
import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { nextPullQueryOptions } from '../advice/use-next-pull';
import { pullsQueryOptions } from '../pulls/use-pulls';

/** Reads ahead what every preset of a visit needs, so that it is on this device when the network goes. */
export function useKeepVisit(
  sessions: readonly TuningSession[],
  presets: readonly Preset[] | undefined,
): void {
  const client = useQueryClient();
  useEffect(() => {
    const current = sessions.at(-1);
    for (const preset of presets ?? []) {
      for (const { id } of sessions) void client.prefetchQuery(pullsQueryOptions(id, preset.id));
      if (current !== undefined) void client.prefetchQuery(nextPullQueryOptions(current.id, preset));
    }
  }, [client, sessions, presets]);
}
