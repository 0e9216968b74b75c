'use client';

import { QueryCache, QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { useState, type ReactNode } from 'react';
import { NoAnswerError, ProblemError } from '../client/problem-error';
import { NoticesProvider } from '../components/notices/notices';

const tries = 3;

/** Asks again only where the answer may change: no network, or a server that was busy. */
function isWorthAnotherTry(failureCount: number, error: Error): boolean {
  if (failureCount >= tries) return false;
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
      queries: { staleTime: 5_000, retry: isWorthAnotherTry },
      mutations: { retry: false },
    },
  });
  return client;
}

/** What every screen stands on: the cache of answers and the place for notices. */
export function Providers({ children }: Readonly<{ children: ReactNode }>) {
  const [client] = useState(makeClient);
  return (
    <QueryClientProvider client={client}>
      <NoticesProvider>{children}</NoticesProvider>
    </QueryClientProvider>
  );
}
