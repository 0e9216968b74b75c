'use client';

import { IsRestoringProvider, QueryCache, QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { useEffect, useState, type ReactNode } from 'react';
import { NoAnswerError, ProblemError } from '../client/problem-error';
import { KeepShell } from '../components/shell/keep-shell';
import { keepAnswers, restoreAnswers } from '../offline/keep-answers';
import { NoticesProvider } from '../components/notices/notices';

const tries = 3;

/** Asks again only where the answer may change: no network, or a server that was busy. */
function isWorthAnotherTry(failureCount: number, error: Error): boolean {
  if (failureCount >= tries || !navigator.onLine) return false;
  if (error instanceof NoAnswerError) return true;
  return error instanceof ProblemError && (error.status === 503 || error.status === 429);
}

function makeClient(): QueryClient {
  const client: QueryClient = new QueryClient({
    queryCache: new QueryCache({
      onError: (error, query) => {
        // Signed out elsewhere, or too long ago: the gate asks again and leads to the sign-in page.
        const isStranger = error instanceof ProblemError && error.status === 401;
        if (isStranger && query.queryKey[0] !== 'me') void client.invalidateQueries({ queryKey: ['me'] });
      },
    }),
    defaultOptions: {
      // Kept for as long as the page lives: without network, what was seen can be seen again.
      queries: { staleTime: 5_000, gcTime: Infinity, networkMode: 'always', retry: isWorthAnotherTry },
      mutations: { retry: false, networkMode: 'always' },
    },
  });
  return client;
}

/** What every screen stands on: the cache of answers and the place for notices. */
export function Providers({ children }: Readonly<{ children: ReactNode }>) {
  const [client] = useState(makeClient);
  const isRestoring = useKeptAnswers(client);
  return (
    <QueryClientProvider client={client}>
      <IsRestoringProvider value={isRestoring}>
        <NoticesProvider>
          <KeepShell />
          {children}
        </NoticesProvider>
      </IsRestoringProvider>
    </QueryClientProvider>
  );
}

/** Reads what this device kept before anything is asked of the server; true while it reads. */
function useKeptAnswers(client: QueryClient): boolean {
  const [isRestoring, setRestoring] = useState(true);
  useEffect(() => {
    // A device that keeps nothing still works as long as there is a network.
    const restored = restoreAnswers(client).catch(() => undefined);
    const stop = keepAnswers(client);
    void restored.then(() => setRestoring(false));
    return stop;
  }, [client]);
  return isRestoring;
}
