'use client';

import { Button } from '../components/button/button';

export default function ErrorPage({ error, reset }: Readonly<{ error: Error; reset: () => void }>) {
  return (
    <main style={{ maxWidth: 560, margin: '12vh auto', padding: 20 }} className="stack" role="alert">
      <h1>This screen had a fault</h1>
      <p>What is recorded is safe. {error.message}</p>
      <p>
        <Button kind="act" onClick={reset}>
          Try again
        </Button>
      </p>
    </main>
  );
}
