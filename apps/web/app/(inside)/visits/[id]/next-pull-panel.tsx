'use client';

import type { Car, NextPull, Preset, Visit } from '@pullbook/contracts';
import dynamic from 'next/dynamic';
import { Mind, Skeleton } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useUnits } from '../../../../components/units/use-units';
import type { SeenPull } from '../../../../offline/pulls-seen';
import { AdvicePart } from './advice-part';
import { StopPart } from './stop-part';
import { useGoOn } from './use-go-on';
import styles from './visit.module.css';

const loading = () => <Skeleton lines={4} label="Opening" />;
const ControllerChoice = dynamic(
  () => import('../../../../components/preset/controller-choice').then((part) => part.ControllerChoice),
  { loading },
);
const GoalForm = dynamic(
  () => import('../../../../components/preset/goal-form').then((part) => part.GoalForm),
  { loading },
);
const AcceptPart = dynamic(() => import('./accept-part').then((part) => part.AcceptPart), { loading });

interface NextPullPanelProps {
  readonly preset: Preset;
  readonly car: Car;
  readonly visit: Visit;
  readonly number: number | null;
  readonly pulls: readonly SeenPull[];
  readonly next: NextPull | undefined;
  readonly error: Error | null;
  readonly onRetry: () => void;
}

/** What to drive next, or what has to be agreed before anything may be driven. */
export function NextPullPanel(props: NextPullPanelProps) {
  const { preset, car, visit, number, pulls, next, error, onRetry } = props;
  const units = useUnits();
  const goOn = useGoOn('next-title');
  if (car.controllerId === null) return <ControllerChoice car={car} />;
  if (preset.targetKpa === null || preset.ceilingKpa === null) return <GoalForm preset={preset} car={car} />;
  if (next === undefined) {
    return (
      <section className={`sheet ${styles.next}`} aria-label="Next pull">
        {error === null ? <Skeleton lines={4} label="Working out the next pull" /> : null}
        <ProblemNote error={error} onRetry={onRetry} />
      </section>
    );
  }
  const { advice } = next;
  if (!next.ready || advice === null) {
    return (
      <section className={`sheet ${styles.next}`} aria-label="Next pull">
        <h2 id="next-title" tabIndex={-1}>
          No advice yet
        </h2>
        <Mind title="Missing">
          <ul>
            {next.missing.map((one) => (
              <li key={one}>{units.say(one)}</li>
            ))}
          </ul>
        </Mind>
      </section>
    );
  }
  if (advice.action === 'stop') {
    return <StopPart visitId={visit.id} advice={advice} pulls={pulls} titleId="next-title" onSound={goOn} />;
  }
  if (advice.action === 'accept') return <AcceptPart preset={preset} visit={visit} advice={advice} />;
  return <AdvicePart number={number} next={next} advice={advice} />;
}
