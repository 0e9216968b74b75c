'use client';

import { Button } from '../../../../components/button/button';
import { Mind } from '../../../../components/marks/marks';
import { dropEntry } from '../../../../offline/decide-entry';
import type { OutboxEntry } from '../../../../offline/outbox-entry';
import type { KeptLog } from '../../../../queries/logs/use-keep-log';
import styles from '../../../../components/log/log.module.css';

interface KeptLogStateProps {
  readonly kept: KeptLog;
  readonly onClose: () => void;
}

/** A log that is kept on this device until the server has it, or that the server would not take. */
export function KeptLogState({ kept: { entry, sentShare }, onClose }: KeptLogStateProps) {
  if (entry?.state === 'waiting') return <OnItsWay sentShare={sentShare} onClose={onClose} />;
  if (entry?.state === 'refused') return <NotTaken entry={entry} onClose={onClose} />;
  return null;
}

interface OnItsWayProps {
  readonly sentShare: number | null;
  readonly onClose: () => void;
}

function OnItsWay({ sentShare, onClose }: OnItsWayProps) {
  const sentPct = sentShare === null ? null : Math.round(sentShare * 100);
  return (
    <div className={styles.progress}>
      <progress max={100} value={sentPct ?? 0} aria-label="Sent" />
      <p role="status">
        {sentPct === null
          ? 'Kept on this device. It is sent as soon as the server can be reached.'
          : sentPct < 100
            ? `Sending, ${sentPct} %`
            : 'Sent. Looking for pulls in it.'}
      </p>
      <p className="soft small">
        Its pulls can be chosen once the server has it. To go on meanwhile, type the peak: the log stays in
        line.
      </p>
      <p>
        <Button onClick={onClose}>Go on meanwhile</Button>
      </p>
    </div>
  );
}

interface NotTakenProps {
  readonly entry: OutboxEntry;
  readonly onClose: () => void;
}

function NotTaken({ entry, onClose }: NotTakenProps) {
  const close = () => void dropEntry(entry).then(onClose);
  return (
    <div role="alert">
      <Mind title="This log was not taken in">
        <p>{entry.refusal?.text}</p>
      </Mind>
      <p>
        <Button onClick={close}>Close, and type the peak instead</Button>
      </p>
    </div>
  );
}
