'use client';

import type { LogHead } from '@pullbook/contracts';
import Link from 'next/link';
import { useState } from 'react';
import { useLogsOfVisit } from '../../queries/logs/use-logs-of-visit';
import { Skeleton } from '../marks/marks';
import { ProblemNote } from '../marks/problem-note';
import { countPulls } from './count-pulls';

/** The logs of a visit, each a link to its traces; asked for when opened. */
export function VisitLogs({ visitId }: Readonly<{ visitId: string }>) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Logs</summary>
      {isOpen ? <LogLines visitId={visitId} /> : null}
    </details>
  );
}

function LogLines({ visitId }: Readonly<{ visitId: string }>) {
  const logs = useLogsOfVisit(visitId);
  if (logs.error !== null) return <ProblemNote error={logs.error} onRetry={() => void logs.refetch()} />;
  if (logs.data === undefined) return <Skeleton lines={1} label="Loading the logs" />;
  if (logs.data.length === 0) return <p className="soft">No log was taken in on this visit.</p>;
  return (
    <ul>
      {logs.data.map((log) => (
        <li key={log.id}>
          <Link href={`/logs/${log.id}`}>{log.fileName}</Link> <span className="soft">{sayPulls(log)}</span>
        </li>
      ))}
    </ul>
  );
}

function sayPulls({ pullCount, confirmedCount }: LogHead): string {
  if (pullCount === 0) return 'no pull found';
  return `${countPulls(pullCount)} found, ${confirmedCount} in the book`;
}
