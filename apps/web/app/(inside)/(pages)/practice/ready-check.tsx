'use client';

import type { PracticeSheet } from '@pullbook/practice-car';
import { useState } from 'react';
import { Button } from '../../../../components/button/button';
import { CheckField } from '../../../../components/field/check-field';
import { Mind } from '../../../../components/marks/marks';
import { useUnits } from '../../../../components/units/use-units';
import { GoalFacts } from './goal-facts';
import styles from './practice.module.css';

/** The habit before the first pull: nothing is driven until all of it is true. */
export function ReadyCheck({ sheet, onReady }: Readonly<{ sheet: PracticeSheet; onReady: () => void }>) {
  const units = useUnits();
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set());
  const questions = [
    'Dynamometer or closed course, never a public road, and nobody else on it?',
    'Two people: one drives, the other works the tablet?',
    'Hoses and lines tight, oil warm, an even idle?',
    `Over-boost cut set to ${units.write(sheet.overBoostCutKpa)}, and known to work?`,
    'Mixture and knock watched on every pull?',
  ];
  const open = questions.filter((question) => !ticked.has(question)).length;
  const tick = (question: string, isTrue: boolean) =>
    setTicked((old) => new Set(isTrue ? [...old, question] : [...old].filter((one) => one !== question)));
  return (
    <div className={styles.ready} data-tour="readiness">
      <div className="stack">
        <h1>Readiness check</h1>
        <p className="soft">
          Here it is a habit to learn; on a real car it is what keeps people whole. Until all of it is true
          there is no pull.
        </p>
        <ul className={`sheet ${styles.questions}`}>
          {questions.map((question) => (
            <li key={question}>
              <CheckField
                label={question}
                checked={ticked.has(question)}
                onChange={(isTrue) => tick(question, isTrue)}
              />
            </li>
          ))}
        </ul>
        <Mind>
          <p>
            Over-boost can destroy an engine and hurt people. Stop at the first odd sign: knock, a lean
            reading, an odd noise or smell, a slipping wheel.
          </p>
        </Mind>
        <div className="row">
          <p className="soft" role="status">
            {open === 0 ? 'Everything is ticked.' : `${open} of ${questions.length} still open.`}
          </p>
          <span className="grow" />
          <Button kind="act" big disabled={open > 0} onClick={onReady}>
            To the first pull
          </Button>
        </div>
      </div>
      <GoalFacts sheet={sheet} />
    </div>
  );
}
