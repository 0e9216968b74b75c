import type { Metadata } from 'next';
import Link from 'next/link';
import { words, type Word } from '../../components/help/words';
import styles from './words.module.css';

export const metadata: Metadata = { title: 'Words' };

const all: ReadonlyArray<readonly [string, Word]> = Object.entries(words);

/** What do the words beside the figures mean? For everybody, signed in or not. */
export default function WordsPage() {
  const inOrder = [...all].sort(([, one], [, other]) => one.name.localeCompare(other.name, 'en'));
  return (
    <main className={styles.page}>
      <p>
        <Link href="/board">To the board</Link>
      </p>
      <h1>Words</h1>
      <p>
        What the words beside the figures mean. Pressures are shown in your own unit, as boost above the air
        outside.
      </p>
      <dl className={styles.words}>
        {inOrder.map(([key, { name, unit, text }]) => (
          <div key={key} id={key}>
            <dt>
              {name}
              {unit === null ? null : <span className="soft small"> in {unit}</span>}
            </dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </main>
  );
}
