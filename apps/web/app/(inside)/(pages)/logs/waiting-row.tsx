'use client';

import type { Log, OpenSession, WaitingLog } from '@pullbook/contracts';
import Link from 'next/link';
import { useState } from 'react';
import { Button } from '../../../../components/button/button';
import { ChoiceField } from '../../../../components/field/choice-field';
import { Tag } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { sayWhen } from '../../../../components/time/say-when';
import { useAssignLog, useDropWaiting } from '../../../../queries/logs/use-waiting-logs';
import { choicesOf } from './session-choices';
import styles from './logs.module.css';

interface WaitingRowProps {
  readonly item: WaitingLog;
  readonly sessions: readonly OpenSession[];
  /** Of an earlier waiting file with the very same bytes. */
  readonly sameName: string | null;
  readonly onAssigned: (log: Log, tuningSessionId: string) => void;
}

/** A file that waits: what it is, to which session it may belong and why; a person says to which it does. */
export function WaitingRow({ item, sessions, sameName, onAssigned }: WaitingRowProps) {
  const assign = useAssignLog();
  const drop = useDropWaiting();
  const [chosen, setChosen] = useState<string | null>(null);
  const sessionId = chosen ?? item.likelySessionId ?? '';
  const reasons =
    item.suggestions.find(({ tuningSessionId }) => tuningSessionId === sessionId)?.reasons ?? [];
  const submit = () =>
    assign.mutate(
      { uploadId: item.uploadId, tuningSessionId: sessionId },
      { onSuccess: (log) => onAssigned(log, sessionId) },
    );
  return (
    <li className={styles.waiting}>
      <div className={styles.name}>
        <b>{item.fileName}</b>
        <p className="soft">
          {sizeOf(item.byteCount)}, {sayFileTime(item)}
          {item.recipeName === null ? '' : `, read by the recipe ${item.recipeName}`}
        </p>
        <Notes item={item} sameName={sameName} />
      </div>
      <div className={styles.choice}>
        <ChoiceField
          label={`Log of (${item.fileName})`}
          hint={
            reasons.length === 0
              ? hintWithout(item)
              : `Suggested: ${reasons.map(({ text }) => text).join('; ')}.`
          }
          value={sessionId}
          onChange={setChosen}
          choices={choicesOf(item, sessions)}
        />
        <div className="row">
          <Button kind="act" busy={assign.isPending} disabled={sessionId === ''} onClick={submit}>
            Assign
          </Button>
          <Button
            busy={drop.isPending}
            aria-label={`Throw away ${item.fileName}`}
            onClick={() => drop.mutate(item.uploadId)}
          >
            Throw away
          </Button>
        </div>
        <ProblemNote error={assign.error ?? drop.error} title="This file still waits" />
      </div>
    </li>
  );
}

function Notes({ item, sameName }: Readonly<Pick<WaitingRowProps, 'item' | 'sameName'>>) {
  return (
    <>
      {item.problem === null ? null : <Tag shape="△">not understood: {item.problem}</Tag>}
      {sameName === null ? null : <Tag shape="=">the same bytes as {sameName}</Tag>}
      {item.onRecord.map(({ logId, plate }) => (
        <Tag key={logId} shape="=">
          on record already: <Link href={`/logs/${logId}`}>log of {plate}</Link>
        </Tag>
      ))}
    </>
  );
}

function hintWithout({ problem, suggestions }: WaitingLog): string {
  if (problem !== null)
    return 'If it is a log: drop it on the visit of its car, where you can say how it is read.';
  return suggestions.length > 1 ? 'Several fit; say which it is.' : 'Nothing tells to which it belongs.';
}

const sayFileTime = ({ writtenAt, uploadedAt }: WaitingLog) =>
  writtenAt === null
    ? `came in ${sayWhen(uploadedAt, new Date())}`
    : `written ${sayWhen(writtenAt, new Date())}`;

function sizeOf(byteCount: number): string {
  return byteCount < 1e6 ? `${Math.ceil(byteCount / 1000)} kB` : `${(byteCount / 1e6).toFixed(1)} MB`;
}
