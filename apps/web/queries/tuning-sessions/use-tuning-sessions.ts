import type { ReadinessAnswer, TuningSession, TuningSessionNew } from '@pullbook/contracts';
import { queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useIntentKey } from '../../client/intent-key';
import { get, send } from '../../client/request';

export const tuningSessionsQueryOptions = (visitId: string) =>
  queryOptions({
    queryKey: ['tuning-sessions', visitId],
    queryFn: async ({ signal }) =>
      (await get<{ items: TuningSession[] }>(`/visits/${visitId}/tuning-sessions?limit=200`, signal)).items,
  });

/** The tuning sessions of one visit. */
export const useTuningSessions = (visitId: string, enabled = true) =>
  useQuery({ ...tuningSessionsQueryOptions(visitId), enabled });

export function useStartTuningSession(visitId: string) {
  const client = useQueryClient();
  const intent = useIntentKey();
  return useMutation({
    mutationFn: (input: TuningSessionNew) =>
      send<TuningSession>('POST', `/visits/${visitId}/tuning-sessions`, {
        body: input,
        idempotencyKey: intent.keyFor(input),
      }),
    onSuccess: () => intent.done(),
    onSettled: () => {
      for (const root of ['tuning-sessions', 'visits', 'board', 'next-pull']) {
        void client.invalidateQueries({ queryKey: [root] });
      }
    },
  });
}

/** Answers the readiness check of one tuning session. */
export function useAnswerReadiness(session: TuningSession) {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (input: ReadinessAnswer) =>
      send<TuningSession>('PUT', `/tuning-sessions/${session.id}/readiness-check`, {
        body: input,
        ifMatch: session.revision,
      }),
    onSettled: () => {
      for (const root of ['tuning-sessions', 'next-pull', 'board', 'cars']) {
        void client.invalidateQueries({ queryKey: [root] });
      }
    },
  });
}
