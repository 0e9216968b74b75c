'use client';

import type { Log } from '@pullbook/contracts';
import { useState } from 'react';
import { TakeInPulls } from '../../../../components/log/take-in-pulls';
import { useSendLogs } from '../../../../queries/logs/use-send-logs';
import { useWaitingLogs } from '../../../../queries/logs/use-waiting-logs';
import { AssignedList, type Assigned } from './assigned-list';
import { DropPlace } from './drop-place';
import { SendingList } from './sending-list';
import { WaitingList } from './waiting-list';

/** Which logs of the day belong to which car? */
export function LogsScreen() {
  const waiting = useWaitingLogs();
  const sending = useSendLogs();
  const [assigned, setAssigned] = useState<readonly Assigned[]>([]);
  const [opened, setOpened] = useState<Assigned | null>(null);
  const keep = (log: Log, tuningSessionId: string) => {
    const session = waiting.data?.sessions.find((one) => one.tuningSessionId === tuningSessionId);
    if (session !== undefined) setAssigned((all) => [{ log, session }, ...all]);
  };
  return (
    <div className="stack">
      <h1>Logs</h1>
      <DropPlace onFiles={sending.send} />
      <SendingList sending={sending} />
      <AssignedList assigned={assigned} onOpen={setOpened} />
      <WaitingList waiting={waiting} onAssigned={keep} />
      {opened === null ? null : (
        <TakeInPulls
          visitId={opened.session.visitId}
          logId={opened.log.id}
          carId={opened.session.carId}
          title={`${opened.session.plate}: ${opened.log.fileName}`}
          onClose={() => setOpened(null)}
        />
      )}
    </div>
  );
}
