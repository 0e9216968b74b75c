'use client';

import type { Workshop } from '@pullbook/contracts';
import { Skeleton } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useSignedInMe } from '../../../../queries/people/use-me';
import { useWorkshop } from '../../../../queries/people/use-workshop';
import { ChecklistPart } from './checklist-part';
import { PaperPart } from './paper-part';
import { RecipesPart } from './recipes-part';
import { TeamPart } from './team-part';
import { ThresholdsPart } from './thresholds-part';
import { TokensPart } from './tokens-part';
import { WorkshopForm } from './workshop-form';
import styles from './workshop.module.css';

/** How do we work here? */
export function WorkshopScreen() {
  const workshop = useWorkshop();
  const { role } = useSignedInMe().member;
  const isOwner = role === 'owner';
  return (
    <div className={styles.page}>
      <h1>Workshop</h1>
      {isOwner ? null : (
        <p>
          {role === 'desk'
            ? 'Only the owner and tuners change what stands here.'
            : 'Checklist and channel recipes are yours to change; the rest is the owner’s.'}
        </p>
      )}
      <ProblemNote error={workshop.error} onRetry={() => void workshop.refetch()} />
      {workshop.isPending ? <Skeleton lines={6} label="Loading the workshop" /> : null}
      {workshop.data === undefined || !isOwner ? null : (
        <>
          <WorkshopForm key={rulesOf(workshop.data)} workshop={workshop.data} />
          <PaperPart key={JSON.stringify(workshop.data.paperHeader)} workshop={workshop.data} />
        </>
      )}
      {isOwner ? <TeamPart /> : null}
      <ChecklistPart mayChange={role !== 'desk'} />
      <RecipesPart mayChange={role !== 'desk'} />
      <ThresholdsPart mayChange={isOwner} />
      <TokensPart />
    </div>
  );
}

/** Each form begins anew when its own part of the workshop changed, and not when the other's did. */
const rulesOf = (workshop: Workshop) => JSON.stringify({ ...workshop, paperHeader: null, revision: 0 });
