'use client';

import type { PresetRevision } from '@pullbook/contracts';
import { sendUnderRevision } from '../../offline/decide-entry';
import type { OutboxEntry } from '../../offline/outbox-entry';
import { drivenAlike, type DrivenFor } from '../../offline/outbox-order';
import { useOutbox } from '../../offline/use-outbox';
import { usePresetRevisions } from '../../queries/presets/use-presets';
import { Button } from '../button/button';
import { Skeleton } from '../marks/marks';
import { ProblemNote } from '../marks/problem-note';
import { sayWhen } from '../time/say-when';
import { useUnits } from '../units/use-units';
import styles from './outbox.module.css';

/** A pull that was driven for a goal which somebody has changed since: both goals side by side, and the choice. */
export function GoalChanged({ entry }: Readonly<{ entry: OutboxEntry }>) {
  const { presetId = '', presetRevision } = entry.body as DrivenFor;
  const { data, error, refetch } = usePresetRevisions(presetId);
  const alike = drivenAlike(useOutbox(), entry).length;
  if (error !== null && data === undefined) {
    return <ProblemNote error={error} onRetry={() => void refetch()} />;
  }
  if (data === undefined) return <Skeleton lines={3} label="Loading both goals" />;
  const seen = data.find(({ revision }) => revision === presetRevision);
  const [now] = [...data].sort((a, b) => b.revision - a.revision);
  if (seen === undefined || now === undefined) return null;
  return (
    <>
      <BothGoals seen={seen} now={now} />
      <Button onClick={() => void sendUnderRevision(entry, now.revision)}>
        {alike === 1
          ? 'Count it for the goal of now'
          : `Count it and ${alike - 1} behind it for the goal of now`}
      </Button>
    </>
  );
}

interface BothGoalsProps {
  readonly seen: PresetRevision;
  readonly now: PresetRevision;
}

function BothGoals({ seen, now }: BothGoalsProps) {
  const units = useUnits();
  const say = (kpa: number | null) => (kpa === null ? 'none' : units.write(kpa));
  const rows = [
    { name: 'Target', then: say(seen.targetKpa), now: say(now.targetKpa) },
    { name: 'Tolerance', then: `± ${say(seen.toleranceKpa)}`, now: `± ${say(now.toleranceKpa)}` },
    { name: 'Ceiling', then: say(seen.ceilingKpa), now: say(now.ceilingKpa) },
  ];
  return (
    <table className={styles.goals}>
      <caption>
        Changed by {now.madeBy}, {sayWhen(now.madeAt, new Date())}
        {now.reason === '' ? '' : `: ${now.reason}`}
      </caption>
      <thead>
        <tr>
          <th scope="col">Goal</th>
          <th scope="col">When driven (revision {seen.revision})</th>
          <th scope="col">Now (revision {now.revision})</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.name}>
            <th scope="row">{row.name}</th>
            <td>{row.then}</td>
            <td>{row.then === row.now ? row.now : <b>{row.now}</b>}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
