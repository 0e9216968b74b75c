'use client';

import type { Intake } from '@pullbook/contracts';
import { useEffect, useRef } from 'react';
import { Button, ButtonLink } from '../../../../components/button/button';
import { Plate } from '../../../../components/marks/marks';

interface IntakeDoneProps {
  readonly intake: Intake;
  readonly plate: string;
  readonly onNext: () => void;
}

/** The car is in: print the sheet that travels with it, or go on. */
export function IntakeDone({ intake, plate, onNext }: IntakeDoneProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <section className="sheet stack" style={{ maxWidth: 760, margin: '6vh auto' }}>
      <h1 ref={heading} tabIndex={-1}>
        <Plate>{plate}</Plate> is in the book
      </h1>
      <p>Customer, car, visit and presets are recorded. Print the job sheet and put it on the dashboard.</p>
      <div className="row">
        <ButtonLink href={`/api/v1/visits/${intake.visitId}/job-sheet.pdf`} kind="act" outside>
          Job sheet (PDF)
        </ButtonLink>
        <ButtonLink href={`/visits/${intake.visitId}`}>Open the visit</ButtonLink>
        <ButtonLink href="/board">To the board</ButtonLink>
        <Button onClick={onNext}>Take in another car</Button>
      </div>
    </section>
  );
}
