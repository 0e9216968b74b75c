'use client';

import type { Log, Preset, TuningSession } from '@pullbook/contracts';
import dynamic from 'next/dynamic';
import { useEffect, useRef, useState } from 'react';
import { ProblemError } from '../../../../client/problem-error';
import { Button } from '../../../../components/button/button';
import { Dialog } from '../../../../components/dialog/dialog';
import { Skeleton } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useTakeInLog } from '../../../../queries/logs/use-take-in-log';
import styles from '../../../../components/log/log.module.css';
import { KeptLogState } from './kept-log-state';

const FoundPulls = dynamic(
  () => import('../../../../components/log/found-pulls').then((part) => part.FoundPulls),
  {
    loading: () => <Skeleton lines={4} label="Opening the pulls found" />,
  },
);
const LogColumns = dynamic(() =>
  import('../../../../components/log/log-columns').then((part) => part.LogColumns),
);
const UnreadLog = dynamic(() =>
  import('../../../../components/log/unread-log').then((part) => part.UnreadLog),
);

interface LogDropProps {
  readonly file: File;
  /** Files that wait behind this one. */
  readonly moreCount: number;
  readonly session: TuningSession;
  readonly preset: Preset;
  readonly dutyPct: number | null;
  readonly onClose: () => void;
}

/**
 * A log on its way in: sent with progress, or kept on this device until the server can be reached; then its columns
 * shown and corrected, and its pulls chosen from.
 */
export function LogDrop({ file, moreCount, session, preset, dutyPct, onClose }: LogDropProps) {
  const take = useTakeInLog(session, preset);
  const started = useRef(false);
  const { mutate } = take;
  useEffect(() => {
    if (started.current) return;
    started.current = true;
    mutate({ file });
  }, [file, mutate]);
  const { kept } = take;
  const isUnderWay = take.isPending || take.isIdle;
  const isKept = kept.entry !== undefined;
  const taken = take.data ?? kept.log;
  return (
    <Dialog title={titleOf(file, moreCount)} onClose={onClose} wide>
      {isUnderWay && take.uploadId === null ? <Sending share={take.sentShare} /> : null}
      {isKept || (take.error === null && !isReadAnew(take)) ? null : (
        <NotTakenIn take={take} file={file} onClose={onClose} />
      )}
      <KeptLogState kept={kept} onClose={onClose} />
      {taken === undefined ? null : (
        <TakenLog
          visitId={session.visitId}
          taken={taken}
          preset={preset}
          dutyPct={dutyPct}
          onDone={onClose}
        />
      )}
    </Dialog>
  );
}

const titleOf = (file: File, moreCount: number) =>
  moreCount === 0 ? `Log ${file.name}` : `Log ${file.name}, then ${moreCount} more`;

type Take = ReturnType<typeof useTakeInLog>;

const isReadAnew = ({ isPending, variables }: Take) => isPending && variables?.reading !== undefined;

interface TakenLogProps {
  readonly visitId: string;
  readonly taken: Log;
  readonly preset: Preset;
  readonly dutyPct: number | null;
  readonly onDone: () => void;
}

function TakenLog({ visitId, taken, preset, dutyPct, onDone }: TakenLogProps) {
  const [log, setLog] = useState(taken);
  return (
    <>
      <LogColumns key={`columns ${log.version}`} log={log} onReadAnew={setLog} />
      <FoundPulls
        key={log.version}
        visitId={visitId}
        log={log}
        preset={preset}
        dutyPct={dutyPct}
        onDone={onDone}
      />
    </>
  );
}

interface NotTakenInProps {
  readonly take: Take;
  readonly file: File;
  readonly onClose: () => void;
}

/** Why a log was not taken in; of one that was not understood, its columns, for a person to say what they are. */
function NotTakenIn({ take, file, onClose }: NotTakenInProps) {
  const { error, uploadId, isPending, mutate } = take;
  const isUnread = isPending || (error instanceof ProblemError && error.code === 'log-unreadable');
  return (
    <>
      <ProblemNote
        error={take.kept.error ?? error}
        title={isUnread ? 'This log was not understood' : 'This log was not taken in'}
        {...(isUnread ? {} : { onRetry: () => mutate({ file }) })}
      />
      {uploadId !== null && isUnread ? (
        <UnreadLog uploadId={uploadId} busy={isPending} onRead={(reading) => mutate({ file, reading })} />
      ) : null}
      <p>
        <Button onClick={onClose}>Close, and type the peak instead</Button>
      </p>
    </>
  );
}

function Sending({ share }: Readonly<{ share: number }>) {
  const sentPct = Math.round(share * 100);
  return (
    <div className={styles.progress} role="status">
      <progress max={100} value={sentPct} aria-label="Sent" />
      <p>
        {sentPct < 100
          ? `Sending, ${sentPct} %. A break does no harm: the file is then kept on this device and sent later.`
          : 'Sent. Looking for pulls in it.'}
      </p>
    </div>
  );
}
