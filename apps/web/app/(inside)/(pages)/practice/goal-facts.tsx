'use client';

import type { PracticeSheet } from '@pullbook/practice-car';
import { useUnits } from '../../../../components/units/use-units';
import { practiceRules } from '../../../../practice/practice-rules';
import styles from './practice.module.css';

/** What is wanted of the car, and what is known of it. */
export function GoalFacts({ sheet }: Readonly<{ sheet: PracticeSheet }>) {
  const units = useUnits();
  const { goal, controller, baseKpa } = sheet;
  const facts: readonly (readonly [string, string])[] = [
    ['Target', `${units.write(goal.targetKpa)} ± ${units.figure(goal.toleranceKpa)}`],
    ['Ceiling, no pull may pass it', units.write(goal.ceilingKpa)],
    ['Peak with the solenoid idle', baseKpa === null ? 'not measured' : units.write(baseKpa)],
    ['Duty', `${controller.dutyMin} to ${controller.dutyMax} %, in steps of ${controller.dutyStep}`],
    ['Up at most', `${practiceRules.stepLimit} points a pull`],
    ['Pulls asked for at the accepted duty', String(practiceRules.requiredPulls)],
    ['Readings', sheet.hasLog ? 'gauge, and a log of each pull' : 'gauge only'],
  ];
  return (
    <section className={`sheet ${styles.facts}`} aria-labelledby="practice-job">
      <h2 id="practice-job">The job</h2>
      <p className="soft small">{sheet.engine}</p>
      <dl>
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
