import type { FirstOwner, Me, SignIn } from '@pullbook/contracts';
import { useMutation, useQueryClient, type QueryClient } from '@tanstack/react-query';
import { send, sendOnly } from '../../client/request';
import { forgetAnswers } from '../../offline/keep-answers';
import { tellTabs } from '../../offline/outbox-channel';
import { meQueryOptions } from './use-me';

/** Whatever was read for the person before is gone; what waits in the outbox stays. */
async function startOver(client: QueryClient, me: Me): Promise<void> {
  client.clear();
  await forgetAnswers().catch(() => undefined);
  client.setQueryData(meQueryOptions().queryKey, me);
  tellTabs('person');
}

/** Signs in by email and password; the server sets the cookie. */
export function useSignIn() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (input: SignIn) => send<Me>('POST', '/sign-in', { body: input }),
    onSuccess: (me) => startOver(client, me),
  });
}

/** Signs out and forgets everything that this page had read. */
export function useSignOut() {
  return useMutation({
    mutationFn: () => sendOnly('POST', '/sign-out'),
    // A new document: nothing that was read stays in this one's memory.
    onSuccess: async () => {
      await forgetAnswers().catch(() => undefined);
      tellTabs('person');
      window.location.replace('/sign-in');
    },
  });
}

/** Makes the first owner of a fresh installation, with the one-time code that the server printed, and signs them in. */
export function useMakeFirstOwner() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (input: (typeof FirstOwner)['_output']) => send<Me>('POST', '/first-owner', { body: input }),
    onSuccess: (me) => startOver(client, me),
  });
}
