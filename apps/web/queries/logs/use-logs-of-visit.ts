import type { LogHead } from '@pullbook/contracts';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { get } from '../../client/request';

export const logsOfVisitQueryOptions = (visitId: string) =>
  queryOptions({
    queryKey: ['logs', 'of-visit', visitId],
    queryFn: async ({ signal }) => (await get<{ items: LogHead[] }>(`/visits/${visitId}/logs`, signal)).items,
  });

/** The logs of one visit, each in a line. */
export const useLogsOfVisit = (visitId: string) => useQuery(logsOfVisitQueryOptions(visitId));
