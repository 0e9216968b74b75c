import type { FirstOwner, Me, SignIn } from '@pullbook/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { send, sendOnly } from '../../client/request';
import { meQueryOptions } from './use-me';

/** Signs in by email and password; the server sets the cookie. */
export function useSignIn() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (input: SignIn) => send<Me>('POST', '/sign-in', { body: input }),
    onSuccess: (me) => {
      client.clear();
      client.setQueryData(meQueryOptions().queryKey, me);
    },
  });
}

/** Signs out and forgets everything that this page had read. */
export function useSignOut() {
  return useMutation({
    mutationFn: () => sendOnly('POST', '/sign-out'),
    // A new document: nothing that was read stays in this one's memory.
    onSuccess: () => window.location.replace('/sign-in'),
  });
}

/** Makes the first owner of a fresh installation, with the one-time code that the server printed, and signs them in. */
export function useMakeFirstOwner() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: (input: (typeof FirstOwner)['_output']) => send<Me>('POST', '/first-owner', { body: input }),
    onSuccess: (me) => {
      client.clear();
      client.setQueryData(meQueryOptions().queryKey, me);
    },
  });
}
