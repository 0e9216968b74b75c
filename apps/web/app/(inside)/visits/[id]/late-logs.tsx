'use client';

import type { Log, Preset } from '@pullbook/contracts';
import dynamic from 'next/dynamic';
import { useState } from 'react';
import { Button } from '../../../../components/button/button';
import { Mind } from '../../../../components/marks/marks';
import { dropEntry } from '../../../../offline/decide-entry';
import type { OutboxEntry } from '../../../../offline/outbox-entry';
import { useOutbox } from '../../../../offline/use-outbox';

const LateLog = dynamic(() => import('./late-log').then((part) => part.LateLog));

interface LateLogsProps {
  readonly visitId: string;
  readonly preset: Preset;
  readonly dutyPct: number | null;
  /** A log that is being looked at already. */
  readonly openFile: File | undefined;
}

/** Logs that were sent after the fact: the server has found their pulls, and nobody has chosen from them yet. */
export function LateLogs({ visitId, preset, dutyPct, openFile }: LateLogsProps) {
  const outbox = useOutbox();
  const [chosen, setChosen] = useState<OutboxEntry | null>(null);
  const late = outbox.filter((entry) => entry.visitId === visitId && isUndecided(entry, outbox));
  if (chosen !== null) {
    const close = () => setChosen(null);
    return (
      <LateLog
        log={chosen.answer as Log}
        visitId={visitId}
        preset={preset}
        dutyPct={dutyPct}
        onClose={close}
      />
    );
  }
  if (late.length === 0 || openFile !== undefined) return null;
  return (
    <Mind title="Arrived at the server: choose the pulls">
      {late.map((entry) => (
        <div key={entry.key} className="row">
          <p className="grow">{sayFound(entry.answer as Log)}</p>
          <Button onClick={() => setChosen(entry)}>Choose its pulls</Button>
          <Button kind="quiet" onClick={() => void dropEntry(entry)}>
            Not now
          </Button>
        </div>
      ))}
    </Mind>
  );
}

function sayFound({ fileName, analysis }: Log): string {
  const count = analysis.pulls.length;
  return `Log ${fileName}: ${count} ${count === 1 ? 'pull' : 'pulls'} found.`;
}

/** A log with pulls in it, from which this device has not taken any since. */
function isUndecided({ state, answer }: OutboxEntry, outbox: readonly OutboxEntry[]): boolean {
  const log = answer as Partial<Log> | null;
  if (state !== 'sent' || !Array.isArray(log?.analysis?.pulls) || log.analysis.pulls.length === 0)
    return false;
  return !outbox.some((entry) => entry.path === `/logs/${log.id}/pulls`);
}
