'use client';

import type { Me } from '@pullbook/contracts';
import { useQueryClient } from '@tanstack/react-query';
import Link from 'next/link';
import { usePathname } from 'next/navigation';
import { useEffect } from 'react';
import { useChangeTour } from '../../queries/people/use-change-tour';
import styles from './tour.module.css';
import { tourSteps, type TourStep } from './tour-steps';

interface TourCardProps {
  readonly me: Me;
  readonly step: number;
}

/** Says what to do next and why, sees that it was done, and gets out of the way when asked. */
export function TourCard({ me, step: at }: TourCardProps) {
  const steps = tourSteps(me.member.role, me.demo);
  const step = steps[at];
  const change = useChangeTour();
  const isLast = at >= steps.length - 1;
  const goOn = () => change.mutate(isLast ? null : at + 1);
  useSeenDone(step, goOn);
  if (step === undefined) return null;
  return (
    <aside className={styles.tour} aria-label="First tour">
      <p role="status">
        <b>
          <span aria-hidden="true">▸ </span>
          {at + 1} of {steps.length}, {step.name}.
        </b>{' '}
        {step.text}
      </p>
      <span className={styles.ways}>
        {step.href === undefined ? null : <Link href={step.href}>Go there</Link>}
        <button type="button" onClick={goOn}>
          {isLast ? 'Done' : 'Next step'}
        </button>
        {isLast ? null : (
          <button type="button" onClick={() => change.mutate(null)}>
            End tour
          </button>
        )}
      </span>
    </aside>
  );
}

const lookAgainMs = 500;

/** Goes on when the step's place is reached, its mark stands on the page, or one pull more is on record. */
function useSeenDone(step: TourStep | undefined, goOn: () => void): void {
  const pathname = usePathname();
  const client = useQueryClient();
  useEffect(() => {
    if (step === undefined) return undefined;
    const pulls = () =>
      client
        .getQueriesData<readonly unknown[]>({ queryKey: ['pulls'] })
        .reduce((sum, [, list]) => sum + (Array.isArray(list) ? list.length : 0), 0);
    const before = pulls();
    const isDone = () =>
      step.path?.test(pathname) === true ||
      (step.mark !== undefined && document.querySelector(step.mark) !== null) ||
      (step.isRecording === true && pulls() > before);
    const timer = setInterval(() => {
      if (!isDone()) return;
      clearInterval(timer);
      goOn();
    }, lookAgainMs);
    return () => clearInterval(timer);
    // `goOn` is made anew at each render and depends on the step alone.
  }, [step, pathname, client]);
}
