'use client';

import type { PracticeEnding, PracticeSheet } from '@pullbook/practice-car';
import { useQuery } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import { Button } from '../../../../components/button/button';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { ResponseChart } from '../../../../components/pictures/response-chart';
import { useUnits } from '../../../../components/units/use-units';
import { askPractice } from '../../../../practice/ask-practice';
import { BookColumn } from './book-column';
import { FindingsPart } from './findings-part';
import { truthFigures } from './picture-figures';
import type { Practice } from './practice';
import styles from './practice.module.css';
import { TruthFacts } from './truth-facts';

interface TruthPartProps {
  readonly sheet: PracticeSheet;
  readonly practice: Practice & { readonly ending: PracticeEnding };
  readonly onAgain: () => void;
  readonly onOther: () => void;
}

/** What the car was all along, and how it went. */
export function TruthPart({ sheet, practice, onAgain, onOther }: TruthPartProps) {
  const units = useUnits();
  const { pulls, ending } = practice;
  const [share, setShare] = useState(0);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  // The car and its duties make each pull, its trace included.
  const driven = pulls.map(({ duty, isSetAside }) => [duty, isSetAside]);
  const told = useQuery({
    queryKey: ['practice', 'end', sheet.level, sheet.number, driven, ending],
    queryFn: () => askPractice('end', sheet, { pulls, ending }, setShare),
    staleTime: Infinity,
    retry: false,
  });
  return (
    <div className={styles.truth} data-tour="truth">
      <div className={styles.verdict}>
        <h1 ref={heading} tabIndex={-1}>
          <span aria-hidden="true">{ending.kind === 'accept' ? '✓ ' : '■ '}</span>
          {sayEnding(ending, pulls.length)}
        </h1>
        <div className="row">
          <Button kind="act" big onClick={onAgain}>
            Same car again
          </Button>
          <Button big onClick={onOther}>
            Another car
          </Button>
        </div>
      </div>
      <ProblemNote error={told.error} onRetry={() => void told.refetch()} />
      {told.data === undefined ? (
        <div className="sheet stack" role="status">
          <p>Working out what the car was all along …</p>
          <progress aria-label="Working out the truth" max={1} value={share} />
        </div>
      ) : (
        <>
          <FindingsPart findings={told.data.findings} askedAt={practice.askedAt} />
          <TruthFacts sheet={sheet} pulls={pulls} ending={ending} truth={told.data.truth} />
          <section className={`sheet ${styles.truthChart}`} aria-labelledby="true-curve">
            <h2 id="true-curve">Your pulls and the true curve</h2>
            <p className="soft small">
              The line is the mean peak of the sound, cold car at each duty. Target{' '}
              {units.write(sheet.goal.targetKpa)}, ceiling {units.write(sheet.goal.ceilingKpa)}.
            </p>
            <ResponseChart figures={truthFigures(sheet, pulls, told.data.truth)} />
          </section>
          <BookColumn sheet={sheet} pulls={pulls} />
        </>
      )}
    </div>
  );
}

function sayEnding(ending: PracticeEnding, pullCount: number): string {
  if (ending.kind === 'ceiling') return `Ended: pull ${pullCount} passed the ceiling`;
  if (ending.kind === 'accept') return `You kept ${ending.duty} %`;
  return ending.because === 'fault'
    ? 'You stopped: something is wrong'
    : 'You stopped: it will not make the target';
}
