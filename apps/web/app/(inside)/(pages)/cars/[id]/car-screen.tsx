'use client';

import Link from 'next/link';
import { ButtonLink } from '../../../../../components/button/button';
import { Plate, Skeleton } from '../../../../../components/marks/marks';
import { NotLoaded } from '../../../../../components/marks/not-loaded';
import { useCar } from '../../../../../queries/cars/use-cars';
import { useSignedInMe } from '../../../../../queries/people/use-me';
import { CarDataForm } from './car-data-form';
import { CarPresets } from './car-presets';
import { CarVisits } from './car-visits';
import { LimitsForm } from './limits-form';
import { MechanicsForm } from './mechanics-form';
import styles from './car.module.css';

/** What is this car, what does each preset do, how has it been worked on? */
export function CarScreen({ carId }: Readonly<{ carId: string }>) {
  const car = useCar(carId);
  const me = useSignedInMe();
  const mayTune = me.member.role !== 'desk';
  if (car.data === undefined) {
    return (
      <>
        <NotLoaded what="car" error={car.error} onRetry={() => void car.refetch()} />
        {car.isPending ? <Skeleton lines={8} label="Loading the car" /> : null}
      </>
    );
  }
  const { data } = car;
  return (
    <div className={styles.page}>
      <header className="row">
        <h1 className={styles.title}>
          <Plate>{data.plate}</Plate> {data.model}
          {data.modelYear === null ? '' : `, ${data.modelYear}`}
        </h1>
        <Link href={`/customers/${data.customerId}`}>{data.customerName}</Link>
        <span className="grow" />
        <ButtonLink href={`/cars/${data.id}/outlook`}>Drift and forecast</ButtonLink>
      </header>
      <div className={styles.two}>
        <div className="stack">
          <CarPresets car={data} mayTune={mayTune} />
          <CarVisits car={data} />
        </div>
        <div className="stack">
          <LimitsForm key={`limits${data.revision}`} car={data} mayTune={mayTune} />
          <CarDataForm key={`data${data.revision}`} car={data} />
          {mayTune ? <MechanicsForm key={`mechanics${data.revision}`} car={data} /> : null}
        </div>
      </div>
    </div>
  );
}
