'use client';

import { useState } from 'react';
import { dropEntry, sendAgain } from '../../offline/decide-entry';
import type { OutboxEntry } from '../../offline/outbox-entry';
import { withDependents } from '../../offline/outbox-order';
import { useOutbox, useUnsent } from '../../offline/use-outbox';
import { useMe } from '../../queries/people/use-me';
import { Button } from '../button/button';
import { Dialog } from '../dialog/dialog';
import { Empty, Mind } from '../marks/marks';
import { sayWhen } from '../time/say-when';
import { GoalChanged } from './goal-changed';
import { sentence } from '../form/sentence';
import { useUnits } from '../units/use-units';
import styles from './outbox.module.css';
import { sayWhatToDo } from './say-what-to-do';

/** Everything that this device has not sent yet: what it is, why it waits, and what can be done about it. */
export function OutboxDialog({ onClose }: Readonly<{ onClose: () => void }>) {
  const unsent = useUnsent();
  return (
    <Dialog title="Not yet sent" onClose={onClose} wide>
      {unsent.length === 0 ? (
        <Empty title="Everything that was written down here is in the workshop’s book." />
      ) : (
        <>
          <p className="soft">
            Kept on this device, also without power. It goes out by itself, once and in this order, as soon as
            the server can be reached.
          </p>
          <ol className={styles.entries}>
            {unsent.map((entry) => (
              <li key={entry.key}>
                <p>
                  <b>{entry.label}</b> <span className="soft small">{sayWhen(entry.madeAt, new Date())}</span>
                </p>
                {entry.state === 'refused' ? <Refused entry={entry} /> : <Waits entry={entry} />}
              </li>
            ))}
          </ol>
        </>
      )}
    </Dialog>
  );
}

function Waits({ entry }: Readonly<{ entry: OutboxEntry }>) {
  const me = useMe().data;
  const outbox = useOutbox();
  const isHeld = outbox.some(
    (one) => one.visitId === entry.visitId && one.order < entry.order && one.state === 'refused',
  );
  const isOthers = me !== undefined && me.member.id !== entry.memberId;
  return (
    <p className="small soft">
      {isOthers
        ? 'Written down by somebody else. It goes out when they sign in on this device.'
        : isHeld
          ? 'Waits until the one above that was not taken in is decided.'
          : 'Waits for the network.'}
    </p>
  );
}

function Refused({ entry }: Readonly<{ entry: OutboxEntry }>) {
  const outbox = useOutbox();
  const units = useUnits();
  const [isSure, setSure] = useState(false);
  const isGoalChanged = entry.refusal?.code === 'goal-changed';
  const along = withDependents(outbox, entry.key).length - 1;
  return (
    <div role="alert" className={styles.refused}>
      <Mind title="Not taken in">
        {/* Where the goal was changed, both goals stand below. */}
        {isGoalChanged ? null : <p>{units.say(sentence(entry.refusal?.text ?? ''))}</p>}
        <p>{entry.refusal === null ? null : sayWhatToDo(entry.refusal)}</p>
      </Mind>
      {isGoalChanged ? <GoalChanged entry={entry} /> : null}
      <div className="row">
        {isGoalChanged ? null : <Button onClick={() => void sendAgain(entry)}>Send again</Button>}
        {isSure ? (
          <Button kind="act" onClick={() => void dropEntry(entry)}>
            {along === 0 ? 'Yes, drop it for good' : `Yes, drop it and ${along} that rest on it`}
          </Button>
        ) : (
          <Button onClick={() => setSure(true)}>Drop it …</Button>
        )}
      </div>
    </div>
  );
}
