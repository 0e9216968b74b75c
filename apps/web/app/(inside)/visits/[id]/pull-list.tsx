'use client';

import dynamic from 'next/dynamic';
import { useState } from 'react';
import { Button } from '../../../../components/button/button';
import { HelpRow } from '../../../../components/help/help-row';
import { Empty, Skeleton } from '../../../../components/marks/marks';
import type { SeenPull } from '../../../../offline/pulls-seen';
import { PullTable } from './pull-table';

const VoidDialog = dynamic(() => import('./void-dialog').then((part) => part.VoidDialog));

const fewPulls = 5;

interface PullListProps {
  /** Null in a closed visit: no pull of it can be voided any more. */
  readonly visitId: string | null;
  readonly pulls: readonly SeenPull[];
  readonly isPending: boolean;
}

/** The pulls of this preset in this visit, newest first, each with its verdict. */
export function PullList({ visitId, pulls, isPending }: PullListProps) {
  const [showAll, setShowAll] = useState(false);
  const [voiding, setVoiding] = useState<SeenPull | null>(null);
  const newestFirst = [...pulls].reverse();
  const shown = showAll ? newestFirst : newestFirst.slice(0, fewPulls);
  return (
    <>
      <h2 id="pulls" className="unseen">
        Pulls
      </h2>
      {isPending ? <Skeleton lines={3} label="Loading the pulls" /> : null}
      {!isPending && pulls.length === 0 ? <NoPull isOpen={visitId !== null} /> : null}
      {pulls.length === 0 ? null : (
        <PullTable pulls={shown} {...(visitId === null ? {} : { onVoid: setVoiding })} />
      )}
      <HelpRow words={['duty', 'peak', 'overshoot', 'ceiling', 'gate_hold', 'heat-soaked_pull', 'proven']} />
      {pulls.length > fewPulls ? (
        <Button kind="quiet" onClick={() => setShowAll(!showAll)}>
          {sayToggle(showAll, pulls.length)}
        </Button>
      ) : null}
      {voiding === null || visitId === null ? null : (
        <VoidDialog visitId={visitId} pull={voiding} onClose={() => setVoiding(null)} />
      )}
    </>
  );
}

function sayToggle(showsAll: boolean, count: number): string {
  return showsAll ? `Show the last ${fewPulls} pulls` : `Show all ${count} pulls`;
}

function NoPull({ isOpen }: Readonly<{ isOpen: boolean }>) {
  return (
    <Empty title="No pull on record for this preset.">
      {isOpen ? (
        <p>Once a duty is shown above: set it, drive one pull, and type its peak or drop in the log.</p>
      ) : null}
    </Empty>
  );
}
