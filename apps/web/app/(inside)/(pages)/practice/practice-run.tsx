'use client';

import type { PracticeOrder } from '@pullbook/practice-car';
import { useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { Skeleton } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { askPractice } from '../../../../practice/ask-practice';
import { PracticeBench } from './practice-bench';
import { ReadyCheck } from './ready-check';
import { TruthPart } from './truth-part';
import { keepPractice, readPractice } from './kept-practice';

interface PracticeRunProps {
  readonly order: PracticeOrder;
  readonly onAgain: () => void;
  readonly onOther: () => void;
}

/** One car from the readiness check to the truth. */
export function PracticeRun({ order, onAgain, onOther }: PracticeRunProps) {
  // A page that is loaded anew goes on where it was.
  const [kept, setKept] = useState(() => readPractice(order));
  useEffect(() => keepPractice(order, kept), [order, kept]);
  const { practice, isReady } = kept;
  const sheet = useQuery({
    queryKey: ['practice', 'sheet', order.level, order.number],
    queryFn: () => askPractice('sheet', order, {}),
    staleTime: Infinity,
    retry: false,
  });
  if (sheet.data === undefined) {
    return (
      <>
        {sheet.isPending ? <Skeleton lines={6} label="Fetching the practice car" /> : null}
        <ProblemNote error={sheet.error} onRetry={() => void sheet.refetch()} />
      </>
    );
  }
  if (!isReady)
    return <ReadyCheck sheet={sheet.data} onReady={() => setKept((old) => ({ ...old, isReady: true }))} />;
  const { ending } = practice;
  if (ending !== null) {
    return (
      <TruthPart
        sheet={sheet.data}
        practice={{ ...practice, ending }}
        onAgain={() => {
          keepPractice(order, null);
          onAgain();
        }}
        onOther={onOther}
      />
    );
  }
  return (
    <PracticeBench
      sheet={sheet.data}
      practice={practice}
      onChange={(change) =>
        setKept((old) => ({ ...old, practice: { ...old.practice, ...change(old.practice) } }))
      }
    />
  );
}
