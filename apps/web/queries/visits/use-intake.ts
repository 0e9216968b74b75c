import type { Intake, IntakeNew, Lookalikes } from '@pullbook/contracts';
import { queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useIntentKey } from '../../client/intent-key';
import { queryText } from '../../client/query-text';
import { get, send } from '../../client/request';

export interface LookalikeText {
  readonly name: string;
  readonly phone: string;
  readonly email: string;
  readonly plate: string;
  readonly vin: string;
}

/** Shorter text than this finds half the book. */
const enoughCharacters = 3;

export const lookalikesQueryOptions = (text: LookalikeText) => {
  const asked = Object.fromEntries(
    Object.entries(text).map(([name, value]) => [
      name,
      value.trim().length >= enoughCharacters ? value.trim() : '',
    ]),
  );
  const search = queryText(asked);
  return queryOptions({
    queryKey: ['customers', 'lookalikes', search],
    queryFn: ({ signal }) => get<Lookalikes>(`/lookalikes${search}`, signal),
    enabled: search !== '',
    placeholderData: (before) => (search === '' ? undefined : before),
  });
};

/** Customers and cars on record that look like the ones being typed in. */
export const useLookalikes = (text: LookalikeText) => useQuery(lookalikesQueryOptions(text));

/** Takes in customer, car, visit and wanted presets, all or nothing. */
export function useIntake() {
  const client = useQueryClient();
  const intent = useIntentKey();
  return useMutation({
    mutationFn: (input: IntakeNew) =>
      send<Intake>('POST', '/intakes', { body: input, idempotencyKey: intent.keyFor(input) }),
    onSuccess: () => intent.done(),
    onSettled: () => {
      for (const root of ['customers', 'cars', 'visits', 'board', 'presets']) {
        void client.invalidateQueries({ queryKey: [root] });
      }
    },
  });
}
