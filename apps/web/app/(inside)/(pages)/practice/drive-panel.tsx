'use client';

import type { NextPull } from '@pullbook/contracts';
import type { PracticeEnding, PracticePull, PracticeSheet } from '@pullbook/practice-car';
import { useMutation } from '@tanstack/react-query';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../../components/button/button';
import { TraceSpark } from '../../../../components/log/trace-spark';
import { Mind } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useUnits } from '../../../../components/units/use-units';
import { askPractice } from '../../../../practice/ask-practice';
import type { TakenPull } from '../../../../practice/practice-question';
import { sayOverStep } from '../../visits/[id]/say-over-step';
import { Stepper } from '../../visits/[id]/stepper';
import bench from '../../visits/[id]/visit.module.css';
import { EndPart } from './end-part';
import { readDuty } from './read-duty';
import styles from './practice.module.css';

interface DrivePanelProps {
  readonly sheet: PracticeSheet;
  readonly pulls: readonly TakenPull[];
  readonly next: NextPull | undefined;
  /** The book's duty, where it was asked for. */
  readonly advisedDuty: number | null;
  readonly onDriven: (pull: PracticePull) => void;
  readonly onEnd: (ending: PracticeEnding) => void;
}

const jumps = [-10, -5, 5, 10];

/** Sets the duty and drives the pull; what the gauge showed last stands on top. */
export function DrivePanel({ sheet, pulls, next, advisedDuty, onDriven, onEnd }: DrivePanelProps) {
  const units = useUnits();
  const { dutyMin, dutyMax, dutyStep } = sheet.controller;
  const [typed, setTyped] = useState('');
  const [fault, setFault] = useState<string | undefined>();
  const last = pulls.at(-1);
  const shown = typed || String(advisedDuty ?? last?.duty ?? dutyMin);
  const set = (text: string) => {
    setTyped(text);
    setFault(undefined);
  };
  const drive = useMutation({
    mutationFn: (duty: number) =>
      askPractice('pull', sheet, { duties: [...pulls.map((pull) => pull.duty), duty] }),
    onSuccess: (pull) => {
      set('');
      onDriven(pull);
    },
  });
  const number = pulls.length + 1;
  const duty = Number(shown.replace(',', '.'));
  const overStep = sayOverStep(shown, next, dutyMin);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readDuty(shown, sheet.controller);
    if ('fault' in read) setFault(read.fault);
    else drive.mutate(read.duty);
  };
  return (
    <aside className={bench.right} aria-label="Drive a pull">
      <Mind>
        <p className="small">
          As on a real car: one drives, the other types. Stop at any odd sign. Over-boost cut is set to{' '}
          {units.write(sheet.overBoostCutKpa)}.
        </p>
      </Mind>
      <Gauge last={last} number={pulls.length} isDriving={drive.isPending} />
      <form onSubmit={submit} noValidate className={bench.record}>
        <Stepper
          label="Duty to drive, %"
          value={shown}
          follows={typed === ''}
          step={dutyStep}
          min={dutyMin}
          max={dutyMax}
          error={fault}
          onChange={set}
        />
        <div className={styles.jumps} role="group" aria-label="Change the duty">
          {jumps.map((jump) => (
            <Button
              key={jump}
              onClick={() => set(String(Math.min(dutyMax, Math.max(dutyMin, (duty || 0) + jump))))}
            >
              {jump > 0 ? `+${jump}` : `−${-jump}`}
            </Button>
          ))}
        </div>
        {overStep === null ? null : (
          <Mind>
            <p className="small">{overStep}</p>
          </Mind>
        )}
        <ProblemNote error={drive.error} />
        <Button type="submit" kind="act" big busy={drive.isPending}>
          {drive.isPending ? `Driving pull ${number} …` : `Drive pull ${number}`}
        </Button>
      </form>
      <EndPart duties={pulls.map((pull) => pull.duty)} onEnd={onEnd} />
    </aside>
  );
}

interface GaugeProps {
  readonly last: TakenPull | undefined;
  readonly number: number;
  readonly isDriving: boolean;
}

/** What the last pull read, in large figures, with its trace where there is a log. */
function Gauge({ last, number, isDriving }: GaugeProps) {
  const units = useUnits();
  return (
    <div className={`sheet ${styles.gauge}`} role="status" aria-busy={isDriving}>
      {last === undefined ? (
        <p className="soft">{isDriving ? 'Driving …' : 'The gauge shows the peak once a pull is driven.'}</p>
      ) : (
        <>
          <p className="soft small">
            Pull {number} at {last.duty} %
          </p>
          <p className={styles.peak} data-testid="practice-peak" data-tour="driven">
            {units.figure(last.recordedPeakKpa)} <span>{units.pressureWord}</span>
          </p>
          {last.trace === null ? null : <TraceSpark trace={last.trace} peakKpa={last.recordedPeakKpa} />}
        </>
      )}
      {isDriving ? <progress aria-label="The pull is being simulated" /> : null}
    </div>
  );
}
