import type { ReportLink, ReportLinkMade } from '@pullbook/contracts';
import { queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useIntentKey } from '../../client/intent-key';
import { get, send, sendOnly } from '../../client/request';

export const reportLinksQueryOptions = (visitId: string) =>
  queryOptions({
    queryKey: ['report-links', visitId],
    queryFn: async ({ signal }) =>
      (await get<{ items: ReportLink[] }>(`/visits/${visitId}/report`, signal)).items,
  });

/** The links by which a customer may read this visit's report; their addresses are shown only when made. */
export const useReportLinks = (visitId: string) => useQuery(reportLinksQueryOptions(visitId));

export function useMakeReportLink(visitId: string) {
  const client = useQueryClient();
  const intent = useIntentKey();
  return useMutation({
    mutationFn: () =>
      send<ReportLinkMade>('POST', `/visits/${visitId}/report`, {
        body: {},
        idempotencyKey: intent.keyFor({ visitId }),
      }),
    onSuccess: () => intent.done(),
    onSettled: () => client.invalidateQueries({ queryKey: reportLinksQueryOptions(visitId).queryKey }),
  });
}

export function useRevokeReportLink(visitId: string) {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (id: string) => sendOnly('POST', `/report-links/${id}/revoke`),
    onSettled: () => client.invalidateQueries({ queryKey: reportLinksQueryOptions(visitId).queryKey }),
  });
}
