'use client';

import type { TraceIndex } from '@pullbook/contracts';
import { Mind, Skeleton } from '../../../../components/marks/marks';
import { NotLoaded } from '../../../../components/marks/not-loaded';
import { VisitBar } from '../../../../components/visit/visit-bar';
import { useTraceIndex } from '../../../../queries/traces/use-trace-index';
import { TakeInButton } from './take-in-button';
import { TraceDesk } from './trace-desk';
import { useUnits } from '../../../../components/units/use-units';
import styles from './log.module.css';

interface LogScreenProps {
  readonly logId: string;
  /** Pull to open with: the id of one in the book, or its place in the log from 1. */
  readonly asked: string | null;
}

/** What happened in that pull? */
export function LogScreen({ logId, asked }: LogScreenProps) {
  const answer = useTraceIndex(logId);
  const { data } = answer;
  if (data?.state !== 'ready') {
    return (
      <main id="content" className={styles.page}>
        <NotLoaded what="log" error={answer.error} onRetry={() => void answer.refetch()} />
        {data?.state === 'building' ? (
          <div className={styles.making} role="status">
            <p>The traces of this log are being made, once and for all.</p>
            <progress max={100} value={Math.round(data.share * 100)} aria-label="Made" />
          </div>
        ) : null}
        {answer.error === null ? <Skeleton lines={8} label="Opening the log" /> : null}
      </main>
    );
  }
  return (
    <>
      <VisitBar visitId={data.visitId} />
      <main id="content" className={styles.page}>
        <Head logId={logId} index={data} />
        <TraceDesk key={data.build} index={data} asked={placeOf(data, asked)} />
      </main>
    </>
  );
}

function Head({ logId, index }: Readonly<{ logId: string; index: TraceIndex }>) {
  const units = useUnits();
  const { log, rowCount, sampleRateHz, warnings } = index;
  const rate = sampleRateHz === null ? 'no even rate' : `${formatCount(Math.round(sampleRateHz))} a second`;
  return (
    <header className={styles.head}>
      <h2 className={styles.title}>{log.fileName}</h2>
      <p className="soft">
        {formatCount(rowCount)} samples of {index.channels.length} channels, {rate}
      </p>
      <TakeInButton logId={logId} index={index} />
      {warnings.length === 0 ? null : (
        <details className={styles.warnings}>
          <summary>
            <span aria-hidden="true">▲ </span>
            {warnings.length === 1 ? '1 thing to mind' : `${warnings.length} things to mind`} about this log
          </summary>
          <Mind>
            <ul>
              {warnings.map((one) => (
                <li key={`${one.code}${one.text}`}>{units.sayReason(one)}</li>
              ))}
            </ul>
          </Mind>
        </details>
      )}
    </header>
  );
}

/** Thin spaces between thousands, as in ISO 80000-1. */
function formatCount(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, '\u202f');
}

function placeOf({ pulls }: TraceIndex, asked: string | null): number | null {
  if (asked === null) return null;
  const inBook = pulls.findIndex(({ record }) => record?.pullId === asked);
  if (inBook >= 0) return inBook;
  const place = Number(asked) - 1;
  return Number.isInteger(place) && place in pulls ? place : null;
}
