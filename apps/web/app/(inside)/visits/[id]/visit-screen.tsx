'use client';

import { Skeleton } from '../../../../components/marks/marks';
import { NotLoaded } from '../../../../components/marks/not-loaded';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useCar } from '../../../../queries/cars/use-cars';
import { useSignedInMe } from '../../../../queries/people/use-me';
import { useTuningSessions } from '../../../../queries/tuning-sessions/use-tuning-sessions';
import { useVisit } from '../../../../queries/visits/use-visits';
import type { Visit } from '@pullbook/contracts';
import dynamic from 'next/dynamic';
import { isClosed } from '../../../../components/visit/is-closed';
import { Bench } from './bench';
import styles from './visit.module.css';

// Loaded when they are needed: a form brings the schemas with it.
const loading = () => <Skeleton lines={6} label="Opening" />;
const VisitAbout = dynamic(
  () => import('../../../../components/visit/visit-about').then((part) => part.VisitAbout),
  { loading },
);
const ReadinessForm = dynamic(() => import('./readiness-form').then((part) => part.ReadinessForm), {
  loading,
});
const ClosedBench = dynamic(() => import('./closed-bench').then((part) => part.ClosedBench), { loading });
const StartSession = dynamic(() => import('./start-session').then((part) => part.StartSession), { loading });

/** What is the next pull, and is it safe? The desk sees how the visit stands and no tuning value to change. */
export function VisitScreen({ visitId }: Readonly<{ visitId: string }>) {
  const visit = useVisit(visitId);
  const me = useSignedInMe();
  if (visit.data === undefined) {
    return (
      <main id="content" className={styles.page}>
        <NotLoaded what="visit" error={visit.error} onRetry={() => void visit.refetch()} />
        {visit.isPending ? <Skeleton lines={6} label="Loading the visit" /> : null}
      </main>
    );
  }
  if (me.member.role === 'desk') return <VisitAbout visitId={visitId} />;
  return <TuningVisit visit={visit.data} />;
}

function TuningVisit({ visit }: Readonly<{ visit: Visit }>) {
  const sessions = useTuningSessions(visit.id);
  const car = useCar(visit.carId);
  const error = sessions.error ?? car.error;
  if (sessions.data === undefined || car.data === undefined) {
    const retry = () => void Promise.all([sessions.refetch(), car.refetch()]);
    return (
      <main id="content" className={styles.page}>
        {error === null ? <Skeleton lines={6} label="Loading the tuning session" /> : null}
        <ProblemNote error={error} onRetry={retry} />
      </main>
    );
  }
  if (isClosed(visit)) return <ClosedBench visit={visit} sessions={sessions.data} car={car.data} />;
  const session = sessions.data.at(-1);
  if (session === undefined) return <StartSession visit={visit} />;
  if (!session.readiness.passed) return <ReadinessForm key={session.id} session={session} car={car.data} />;
  return <Bench visit={visit} session={session} sessions={sessions.data} car={car.data} />;
}
