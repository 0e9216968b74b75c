'use client';

import type { TraceIndex } from '@pullbook/contracts';
import dynamic from 'next/dynamic';
import { useState } from 'react';
import { Button } from '../../../../components/button/button';
import { countPulls } from '../../../../components/log/count-pulls';
import { isClosed } from '../../../../components/visit/is-closed';
import { useSignedInMe } from '../../../../queries/people/use-me';
import { useVisit } from '../../../../queries/visits/use-visits';

const TakeInPulls = dynamic(() =>
  import('../../../../components/log/take-in-pulls').then((part) => part.TakeInPulls),
);

/** The way into the book for pulls of this log that are not in it yet, while the visit is open. */
export function TakeInButton({ logId, index }: Readonly<{ logId: string; index: TraceIndex }>) {
  const me = useSignedInMe();
  const visit = useVisit(index.visitId).data;
  const [isOpen, setOpen] = useState(false);
  const restCount = index.pulls.filter(({ record }) => record === null).length;
  if (restCount === 0 || visit === undefined || isClosed(visit) || me.member.role === 'desk') return null;
  return (
    <>
      <Button onClick={() => setOpen(true)}>
        Take {restCount === index.pulls.length ? '' : 'the other '}
        {countPulls(restCount)} into the book
      </Button>
      {isOpen ? (
        <TakeInPulls
          visitId={index.visitId}
          logId={logId}
          carId={visit.carId}
          title={`${visit.plate}: ${index.log.fileName}`}
          onClose={() => setOpen(false)}
        />
      ) : null}
    </>
  );
}
