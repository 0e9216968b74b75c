import styles from '../components/button/button.module.css';

/** Loaded ahead with every screen, so it takes looks only: a component would bring the router's link along. */
export default function NotFound() {
  return (
    <main style={{ maxWidth: 560, margin: '12vh auto', padding: 20 }} className="stack">
      <h1>No such page in this book</h1>
      <p>The address may be mistyped, or the record belongs to another workshop.</p>
      <p>
        <a className={`${styles.button} ${styles.act}`} href="/board">
          To the board
        </a>
      </p>
    </main>
  );
}
