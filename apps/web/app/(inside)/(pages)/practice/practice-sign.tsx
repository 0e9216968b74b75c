import type { PracticeOrder } from '@pullbook/practice-car';
import Link from 'next/link';
import { levelName } from './levels';
import styles from './practice.module.css';

/** Stands over everything for as long as one practises: this is not the book. */
export function PracticeSign({ order }: Readonly<{ order: PracticeOrder | null }>) {
  return (
    <aside className={styles.sign} aria-label="This is practice">
      <span className={styles.signShape} aria-hidden="true">
        ◇
      </span>
      <p>
        <b>Practice, not in the book</b>
        <span className={styles.signWhy}>
          {' · a simulated car'}
          {order === null ? '' : ` · ${levelName(order.level)}, number ${order.number}`}
        </span>
      </p>
      {order === null ? null : <Link href="/practice">Leave this car</Link>}
    </aside>
  );
}
