import type { PresetOutlook } from '@pullbook/contracts';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { get } from '../../client/request';

export const outlookQueryOptions = (presetId: string) =>
  queryOptions({
    queryKey: ['outlook', presetId],
    queryFn: ({ signal }) => get<PresetOutlook>(`/presets/${presetId}/outlook`, signal),
    enabled: presetId !== '',
  });

/** How a preset has aged and what it will do in other conditions; an empty id asks for nothing. */
export const useOutlook = (presetId: string) => useQuery(outlookQueryOptions(presetId));
