import type { Preset, PresetRevision } from '@pullbook/contracts';
import { queryOptions, useQueries, useQuery } from '@tanstack/react-query';
import { get } from '../../client/request';

export const presetsQueryOptions = (carId: string) =>
  queryOptions({
    queryKey: ['presets', 'of-car', carId],
    queryFn: async ({ signal }) =>
      (await get<{ items: Preset[] }>(`/cars/${carId}/presets?limit=200`, signal)).items,
    enabled: carId !== '',
  });

/** The presets of one car; an empty id asks for nothing. */
export const usePresets = (carId: string) => useQuery(presetsQueryOptions(carId));

export const presetQueryOptions = (presetId: string) =>
  queryOptions({
    queryKey: ['presets', 'one', presetId],
    queryFn: ({ signal }) => get<Preset>(`/presets/${presetId}`, signal),
  });

/** One preset. */
export const usePreset = (presetId: string) => useQuery(presetQueryOptions(presetId));

export const presetRevisionsQueryOptions = (presetId: string) =>
  queryOptions({
    queryKey: ['presets', 'revisions', presetId],
    queryFn: async ({ signal }) =>
      (await get<{ items: PresetRevision[] }>(`/presets/${presetId}/revisions?limit=200`, signal)).items,
  });

/** Every revision of one preset, each as it was written. */
export const usePresetRevisions = (presetId: string) => useQuery(presetRevisionsQueryOptions(presetId));

interface RevisionsOfPresets {
  readonly of: (presetId: string) => readonly PresetRevision[];
  readonly isPending: boolean;
  readonly error: Error | null;
}

/** Every revision of several presets. */
export function useRevisionsOfPresets(presetIds: readonly string[]): RevisionsOfPresets {
  return useQueries({
    queries: presetIds.map(presetRevisionsQueryOptions),
    combine: (answers) => ({
      of: (presetId: string) => answers[presetIds.indexOf(presetId)]?.data ?? [],
      isPending: answers.some((one) => one.isPending),
      error: answers.find((one) => one.error !== null)?.error ?? null,
    }),
  });
}
