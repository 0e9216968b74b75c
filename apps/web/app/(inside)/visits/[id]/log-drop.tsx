'use client';

import type { Preset, TuningSession } from '@pullbook/contracts';
import dynamic from 'next/dynamic';
import { useEffect, useRef } from 'react';
import { Button } from '../../../../components/button/button';
import { Dialog } from '../../../../components/dialog/dialog';
import { Skeleton } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useUploadLog } from '../../../../queries/logs/use-upload-log';
import styles from './log.module.css';

const FoundPulls = dynamic(() => import('./found-pulls').then((part) => part.FoundPulls), {
  loading: () => <Skeleton lines={4} label="Opening the pulls found" />,
});

interface LogDropProps {
  readonly file: File;
  readonly session: TuningSession;
  readonly preset: Preset;
  readonly dutyPct: number | null;
  readonly onClose: () => void;
}

/** A log on its way in: sent with progress, read on the server, then chosen from. */
export function LogDrop({ file, session, preset, dutyPct, onClose }: LogDropProps) {
  const upload = useUploadLog(session.id);
  const started = useRef(false);
  const { mutate } = upload;
  useEffect(() => {
    if (started.current) return;
    started.current = true;
    mutate(file);
  }, [file, mutate]);
  const sentPct = Math.round(upload.sentShare * 100);
  return (
    <Dialog title={`Log ${file.name}`} onClose={onClose} wide>
      {upload.isPending || upload.isIdle ? (
        <div className={styles.progress} role="status">
          <progress max={100} value={sentPct} aria-label="Sent" />
          <p>{sentPct < 100 ? `Sending, ${sentPct} %` : 'Sent. Looking for pulls in it.'}</p>
        </div>
      ) : null}
      {upload.error === null ? null : (
        <>
          <ProblemNote error={upload.error} title="This log was not taken in" onRetry={() => mutate(file)} />
          <p>
            <Button onClick={onClose}>Close, and type the peak instead</Button>
          </p>
        </>
      )}
      {upload.data === undefined ? null : (
        <FoundPulls log={upload.data} preset={preset} dutyPct={dutyPct} onDone={onClose} />
      )}
    </Dialog>
  );
}
