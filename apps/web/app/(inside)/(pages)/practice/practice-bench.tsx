'use client';

import type { NextPull } from '@pullbook/contracts';
import type { PracticeSheet } from '@pullbook/practice-car';
import { useQuery } from '@tanstack/react-query';
import { PeakStrip } from '../../../../components/pictures/peak-strip';
import { ResponseChart } from '../../../../components/pictures/response-chart';
import { adviseHere } from '../../../../offline/advise-here';
import bench from '../../visits/[id]/visit.module.css';
import { BookCard } from './book-card';
import { DrivePanel } from './drive-panel';
import { GoalFacts } from './goal-facts';
import { chartFigures, stripFigures } from './picture-figures';
import { lookOver } from './look-over';
import { advicePulls, basisOf, type Practice } from './practice';
import styles from './practice.module.css';
import { PracticePulls } from './practice-pulls';

interface PracticeBenchProps {
  readonly sheet: PracticeSheet;
  readonly practice: Practice;
  readonly onChange: (change: (old: Practice) => Partial<Practice>) => void;
}

/** The bench as on a visit: what to drive next, what was driven, and the place to drive it. */
export function PracticeBench({ sheet, practice, onChange }: PracticeBenchProps) {
  const { pulls, askedAt } = practice;
  const number = pulls.length + 1;
  const advised = useQuery({
    queryKey: ['practice', 'advice', sheet.level, sheet.number, advicePulls(pulls)],
    queryFn: () => adviseHere(basisOf(sheet), advicePulls(pulls)),
    staleTime: Infinity,
    retry: false,
  });
  const next: NextPull | undefined = advised.data;
  const isShown = askedAt.includes(number);
  const advice = isShown ? (next?.advice ?? null) : null;
  const ask = () => onChange((old) => ({ askedAt: [...old.askedAt, number] }));
  return (
    <div className={`${bench.halves} ${styles.bench}`} data-tour="bench">
      <h1 className="unseen">Practice: find the duty</h1>
      <div className={bench.left}>
        <BookCard
          sheet={sheet}
          number={number}
          next={next}
          error={advised.error}
          isShown={isShown}
          onShow={ask}
          onLookOver={() => onChange((old) => lookOver(old.pulls, new Date()))}
          onRetry={() => void advised.refetch()}
        />
        <section className={`sheet ${bench.stripSheet}`} aria-label="Peak strip">
          <PeakStrip form="medium" figures={stripFigures(sheet, pulls, advice)} />
        </section>
        <section className={`sheet ${bench.listSheet}`} aria-labelledby="practice-pulls">
          <PracticePulls
            sheet={sheet}
            pulls={pulls}
            onSetAside={(index) =>
              onChange((old) => ({
                pulls: old.pulls.map((pull, at) =>
                  at === index ? { ...pull, isSetAside: !pull.isSetAside } : pull,
                ),
              }))
            }
          />
          {pulls.length === 0 && advice === null ? null : (
            <figure className={bench.response}>
              <figcaption>Response: peak against duty</figcaption>
              <ResponseChart figures={chartFigures(sheet, pulls, advice)} />
            </figure>
          )}
        </section>
        <GoalFacts sheet={sheet} />
      </div>
      <DrivePanel
        sheet={sheet}
        pulls={pulls}
        next={next}
        advisedDuty={advice?.duty ?? null}
        onDriven={(pull) =>
          onChange((old) => ({
            pulls: [...old.pulls, { ...pull, isSetAside: false }],
            ...(pull.recordedPeakKpa > sheet.goal.ceilingKpa ? { ending: { kind: 'ceiling' } } : {}),
          }))
        }
        onEnd={(ending) => onChange(() => ({ ending }))}
      />
    </div>
  );
}
