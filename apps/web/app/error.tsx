'use client';

import styles from '../components/button/button.module.css';

/** Loaded ahead with every screen, so it takes looks only: a component would bring the router's link along. */
export default function ErrorPage({ error, reset }: Readonly<{ error: Error; reset: () => void }>) {
  return (
    <main style={{ maxWidth: 560, margin: '12vh auto', padding: 20 }} className="stack" role="alert">
      <h1>This screen had a fault</h1>
      <p>What is recorded is safe. {error.message}</p>
      <p>
        <button type="button" className={`${styles.button} ${styles.act}`} onClick={reset}>
          Try again
        </button>
      </p>
    </main>
  );
}
