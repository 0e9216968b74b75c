'use client';

import type { DutyAdvice } from '@pullbook/contracts';
import type { PracticeSheet } from '@pullbook/practice-car';
import { useQuery } from '@tanstack/react-query';
import { Skeleton } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useUnits } from '../../../../components/units/use-units';
import { adviseHere } from '../../../../offline/advise-here';
import type { TakenPull } from '../../../../practice/practice-question';
import styles from './practice.module.css';
import { advicePulls, basisOf } from './practice';

/** Pull by pull, what the book would have advised before it, beside what was driven. */
export function BookColumn({
  sheet,
  pulls,
}: Readonly<{ sheet: PracticeSheet; pulls: readonly TakenPull[] }>) {
  const units = useUnits();
  const seen = advicePulls(pulls);
  const book = useQuery({
    queryKey: ['practice', 'book', sheet.level, sheet.number, seen],
    queryFn: async () => {
      const answers: (DutyAdvice | null)[] = [];
      for (let count = 0; count <= pulls.length; count += 1)
        answers.push((await adviseHere(basisOf(sheet), seen.slice(0, count))).advice);
      return answers;
    },
    staleTime: Infinity,
    retry: false,
  });
  return (
    <section className="sheet stack" aria-labelledby="book-column">
      <h2 id="book-column">What the book would have advised</h2>
      <ProblemNote error={book.error} onRetry={() => void book.refetch()} />
      {book.isPending ? <Skeleton lines={4} label="Asking the book about each pull" /> : null}
      {book.data === undefined ? null : (
        <div className="scroll" tabIndex={0} role="region" aria-label="Advice at each pull">
          <table className={styles.book}>
            <thead>
              <tr>
                <th scope="col">Before pull</th>
                <th scope="col">You</th>
                <th scope="col" className="n">
                  Peak {units.pressureWord}
                </th>
                <th scope="col">The book</th>
              </tr>
            </thead>
            <tbody>
              {book.data.map((advice, index) => (
                <tr key={index}>
                  <td>{index < pulls.length ? index + 1 : 'after the last'}</td>
                  <td>{pulls[index] === undefined ? '–' : `${pulls[index].duty} %`}</td>
                  <td className="n">
                    {pulls[index] === undefined ? '–' : units.figure(pulls[index].recordedPeakKpa)}
                  </td>
                  <td>
                    <b>{sayAdvice(advice)}</b>
                    <span className="soft small">
                      {(advice?.reasons ?? [])
                        .filter(({ code }, place) => place === 0 || code === 'expected-range')
                        .map(units.sayReason)
                        .join(' ')}
                    </span>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}

function sayAdvice(advice: DutyAdvice | null): string {
  if (advice === null) return 'no advice';
  if (advice.action === 'stop') return '■ stop';
  if (advice.action === 'accept') return `✓ keep ${advice.duty} %`;
  return advice.action === 'repeat' ? `repeat ${advice.duty} %` : `${advice.duty} %`;
}
