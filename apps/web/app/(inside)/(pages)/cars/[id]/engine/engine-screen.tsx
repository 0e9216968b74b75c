'use client';

import Link from 'next/link';
import { Mind, Plate, Skeleton } from '../../../../../../components/marks/marks';
import { NotLoaded } from '../../../../../../components/marks/not-loaded';
import { useCar } from '../../../../../../queries/cars/use-cars';
import { useEngineSheet } from '../../../../../../queries/engine/use-engine-sheet';
import { CeilingPart } from './ceiling-part';
import { InputsPart } from './inputs-part';
import { MapPart } from './map-part';
import { NumbersPart } from './numbers-part';
import styles from './engine.module.css';

/** How high may boost go on this car, why, and what do engine, injectors and compressor do there? */
export function EngineScreen({ carId }: Readonly<{ carId: string }>) {
  const car = useCar(carId);
  const sheet = useEngineSheet(carId);
  if (car.data === undefined || sheet.data === undefined) {
    const error = car.error ?? sheet.error;
    const retry = () => {
      void car.refetch();
      void sheet.refetch();
    };
    return (
      <>
        <NotLoaded what="car" error={error} onRetry={retry} />
        {error === null ? <Skeleton lines={8} label="Reckoning the engine" /> : null}
      </>
    );
  }
  return (
    <div className={styles.page}>
      <header className="row">
        <h1 className={styles.title}>
          Engine of <Plate>{car.data.plate}</Plate> {car.data.model}
        </h1>
        <Link href={`/cars/${carId}`}>back to the car</Link>
      </header>
      <Mind>
        <p>
          Reckoned, not measured: figures to plan with. Set the over-boost cut, watch mixture and knock, and
          stop at the first odd sign.
        </p>
      </Mind>
      <div className={styles.two}>
        <div className="stack">
          <CeilingPart sheet={sheet.data} />
          <InputsPart sheet={sheet.data} car={car.data} />
        </div>
        <div className="stack">
          <NumbersPart sheet={sheet.data} />
          <MapPart sheet={sheet.data} />
        </div>
      </div>
    </div>
  );
}
