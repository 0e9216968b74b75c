'use client';

import type { SignOffChecklist } from '@pullbook/contracts';
import dynamic from 'next/dynamic';
import { useState } from 'react';
import { Button } from '../../../../components/button/button';
import { Skeleton, Tag } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { evidenceNames } from '../../../../components/sign-off/evidence-names';
import { sayDate } from '../../../../components/time/say-when';
import { useChecklist } from '../../../../queries/checklists/use-checklist';
import styles from './checklist.module.css';

const ChecklistForm = dynamic(() => import('./checklist-form').then((part) => part.ChecklistForm), {
  loading: () => <Skeleton lines={8} label="Opening the checklist" />,
});

/** What does every sign-off ask for? */
export function ChecklistPart({ mayChange }: Readonly<{ mayChange: boolean }>) {
  const checklist = useChecklist();
  const [begun, setBegun] = useState<SignOffChecklist | null>(null);
  const { data } = checklist;
  return (
    <section className="sheet stack" aria-labelledby="checklist">
      <div className="row">
        <h2 id="checklist">Checklist of the sign-off</h2>
        <span className="grow" />
        {mayChange && data !== undefined && begun === null ? (
          <Button onClick={() => setBegun(data)}>Change checklist</Button>
        ) : null}
      </div>
      <p className="soft">
        What is looked at before a car leaves. A changed list is a new revision: sign-offs that are sealed
        keep the list they were sealed with.
      </p>
      <ProblemNote error={checklist.error} onRetry={() => void checklist.refetch()} />
      {checklist.isPending ? <Skeleton lines={6} label="Loading the checklist" /> : null}
      {data === undefined || begun !== null ? null : <ItemList checklist={data} />}
      {begun === null ? null : <ChecklistForm begun={begun} onDone={() => setBegun(null)} />}
    </section>
  );
}

function ItemList({ checklist }: Readonly<{ checklist: SignOffChecklist }>) {
  return (
    <>
      <ol className={styles.items}>
        {checklist.items.map((item) => (
          <li key={item.key}>
            <span>{item.text}</span>
            {item.builtIn === null ? <Tag shape="+">our own</Tag> : null}
            {item.evidence === null ? null : (
              <Tag shape="✓">ticked by the data: {evidenceNames[item.evidence]}</Tag>
            )}
          </li>
        ))}
      </ol>
      <p className="soft small">{sayRevision(checklist)}</p>
    </>
  );
}

function sayRevision({ revision, changedBy, changedAt }: SignOffChecklist): string {
  if (changedBy === null || changedAt === null) return 'The list as it comes.';
  return `Revision ${revision}, by ${changedBy}, ${sayDate(changedAt)}.`;
}
