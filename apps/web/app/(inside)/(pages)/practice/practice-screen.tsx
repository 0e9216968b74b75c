'use client';

import { useRouter, useSearchParams } from 'next/navigation';
import { useState } from 'react';
import { ChooseCar } from './choose-car';
import { PracticeSign } from './practice-sign';
import { PracticeRun } from './practice-run';
import { addressOf, anyOrder, readOrder } from './read-order';
import styles from './practice.module.css';

/** Can I do this without breaking anything? A simulated car to try it on. */
export function PracticeScreen() {
  const order = readOrder(useSearchParams());
  const router = useRouter();
  const [round, setRound] = useState(0);
  if (order === null) {
    return (
      <div className={styles.screen}>
        <PracticeSign order={null} />
        <ChooseCar onChoose={(chosen) => router.push(addressOf(chosen))} />
      </div>
    );
  }
  return (
    <div className={styles.screen}>
      <PracticeSign order={order} />
      <PracticeRun
        key={`${addressOf(order)} ${round}`}
        order={order}
        onAgain={() => setRound(round + 1)}
        onOther={() => router.push(addressOf(anyOrder(order.level)))}
      />
    </div>
  );
}
