'use client';

import type { DutyAdvice, NextPull } from '@pullbook/contracts';
import type { PracticeSheet } from '@pullbook/practice-car';
import type { ReactNode } from 'react';
import { Button } from '../../../../components/button/button';
import { Skeleton } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useUnits } from '../../../../components/units/use-units';
import { AdvicePart } from '../../visits/[id]/advice-part';
import { faultOfStop } from '../../visits/[id]/fault-of-stop';
import { useGoOn } from '../../visits/[id]/use-go-on';
import bench from '../../visits/[id]/visit.module.css';
import styles from './practice.module.css';

interface BookCardProps {
  readonly sheet: PracticeSheet;
  readonly number: number;
  readonly next: NextPull | undefined;
  readonly error: Error | null;
  readonly isShown: boolean;
  readonly onShow: () => void;
  /** Looks the car over, where the book stops for what may be a fault. */
  readonly onLookOver: () => void;
  readonly onRetry: () => void;
}

/** What the book would do now: asked for, or left shut to try it oneself. */
export function BookCard(props: BookCardProps) {
  const { sheet, number, next, error, isShown, onShow, onLookOver, onRetry } = props;
  const goOn = useGoOn('next-title');
  const lookOver = () => {
    goOn();
    onLookOver();
  };
  if (!isShown) {
    return (
      <section className={`sheet ${bench.next} ${styles.shut}`} aria-labelledby="next-title">
        <h2 id="next-title">Pull {number}: which duty?</h2>
        <GoalLine sheet={sheet} />
        <p>Set it yourself. The book has an answer ready, and will say afterwards what it would have done.</p>
        <div>
          <Button onClick={onShow}>Show what the book advises</Button>
        </div>
      </section>
    );
  }
  const advice = next?.advice ?? null;
  if (next === undefined || advice === null) {
    return (
      <section className={`sheet ${bench.next}`} aria-label="Next pull">
        {error === null ? <Skeleton lines={4} label="Working out the next pull" /> : null}
        <ProblemNote error={error} onRetry={onRetry} />
      </section>
    );
  }
  if (advice.action === 'stop')
    return (
      <EndAdvice advice={advice} title="■ The book would stop" look={bench.stop}>
        {faultOfStop(advice) === null ? null : (
          <>
            <p>
              It may be a fault. Looked over, the car shows one that has come; if nothing is wrong, the advice
              goes on from the pulls as they are.
            </p>
            <div>
              <Button onClick={lookOver}>Look the car over</Button>
            </div>
          </>
        )}
      </EndAdvice>
    );
  if (advice.action === 'accept')
    return (
      <EndAdvice
        advice={advice}
        title={`✓ The book would keep ${advice.duty} %`}
        look={`sheet ${bench.accept}`}
      />
    );
  return <AdvicePart number={number} next={next} advice={advice} />;
}

function GoalLine({ sheet }: Readonly<{ sheet: PracticeSheet }>) {
  const units = useUnits();
  const { targetKpa, toleranceKpa, ceilingKpa } = sheet.goal;
  return (
    <p className={styles.goalLine}>
      Target{' '}
      <b>
        {units.write(targetKpa)} ± {units.figure(toleranceKpa)}
      </b>
      , ceiling <b>{units.write(ceilingKpa)}</b>.
    </p>
  );
}

interface EndAdviceProps {
  readonly advice: DutyAdvice;
  readonly title: string;
  readonly look: string | undefined;
  readonly children?: ReactNode;
}

/** The book sees no further pull. */
function EndAdvice({ advice, title, look, children }: EndAdviceProps) {
  const units = useUnits();
  return (
    <section className={`${look} ${bench.next}`} aria-labelledby="next-title">
      <h2 id="next-title" tabIndex={-1}>
        {title}
      </h2>
      {advice.reasons.map((reason) => (
        <p key={reason.code}>{units.sayReason(reason)}</p>
      ))}
      {children}
    </section>
  );
}
