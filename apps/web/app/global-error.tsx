'use client';

/** Stands in where the page around every screen has a fault. Loaded ahead with every screen, so it is kept bare. */
export default function GlobalErrorPage({ error, reset }: Readonly<{ error: Error; reset: () => void }>) {
  return (
    <html lang="en">
      <body>
        <main role="alert">
          <h1>This page had a fault</h1>
          <p>What is recorded is safe. {error.message}</p>
          <button type="button" onClick={reset}>
            Try again
          </button>
        </main>
      </body>
    </html>
  );
}
