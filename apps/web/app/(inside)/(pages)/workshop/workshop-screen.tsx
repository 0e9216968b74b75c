'use client';

import { Skeleton } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useSignedInMe } from '../../../../queries/people/use-me';
import { useWorkshop } from '../../../../queries/people/use-workshop';
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
      {isOwner ? null : <p>Only the owner changes these settings.</p>}
      <ProblemNote error={workshop.error} onRetry={() => void workshop.refetch()} />
      {workshop.isPending ? <Skeleton lines={6} label="Loading the workshop" /> : null}
      {workshop.data === undefined || !isOwner ? null : (
        <WorkshopForm key={workshop.data.revision} workshop={workshop.data} />
      )}
      {isOwner ? <TeamPart /> : null}
      <RecipesPart mayChange={role !== 'desk'} />
      <ThresholdsPart mayChange={isOwner} />
      <TokensPart />
    </div>
  );
}
