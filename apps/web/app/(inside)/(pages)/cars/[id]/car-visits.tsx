'use client';

import type { Car } from '@pullbook/contracts';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { Button, ButtonLink } from '../../../../../components/button/button';
import { VisitLogs } from '../../../../../components/log/visit-logs';
import { Empty, Skeleton } from '../../../../../components/marks/marks';
import { ProblemNote } from '../../../../../components/marks/problem-note';
import { stageNames } from '../../../../../components/stage/stage-names';
import { sayDate } from '../../../../../components/time/say-when';
import { visitNumber } from '../../../../../components/visit/visit-number';
import { useCreateVisit } from '../../../../../queries/visits/use-create-visit';
import { useVisitsOfCar } from '../../../../../queries/visits/use-visits';
import styles from './car.module.css';

/** Every stay of this car in the workshop. */
export function CarVisits({ car }: Readonly<{ car: Car }>) {
  const visits = useVisitsOfCar(car.id);
  const create = useCreateVisit();
  const router = useRouter();
  const open = () =>
    create.mutate(
      {
        carId: car.id,
        stage: 'arrived',
        wishes: '',
        bay: null,
        tunerId: null,
        bookedFor: null,
        promisedAt: null,
      },
      { onSuccess: (visit) => router.push(`/visits/${visit.id}/about`) },
    );
  return (
    <section className="sheet stack" aria-labelledby="visits">
      <div className="row">
        <h2 id="visits">Visits</h2>
        <span className="grow" />
        {(visits.data ?? []).length > 1 ? (
          <ButtonLink href={`/cars/${car.id}/compare`}>Compare visits</ButtonLink>
        ) : null}
        <Button busy={create.isPending} onClick={open}>
          Open a visit now
        </Button>
      </div>
      <ProblemNote error={create.error ?? visits.error} />
      {visits.isPending ? <Skeleton lines={3} label="Loading the visits" /> : null}
      {visits.data?.length === 0 ? <Empty title="This car has not been here yet." /> : null}
      <ul className={styles.lines}>
        {(visits.data ?? []).map((visit) => (
          <li key={visit.id}>
            <Link href={`/visits/${visit.id}`}>Visit {visitNumber(visit.number)}</Link>
            <span>{stageNames[visit.stage]}</span>
            <span className="soft">{sayDate(visit.createdAt)}</span>
            <span className="soft">{visit.wishes}</span>
            <VisitLogs visitId={visit.id} />
          </li>
        ))}
      </ul>
    </section>
  );
}
