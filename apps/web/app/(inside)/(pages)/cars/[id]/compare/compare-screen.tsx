'use client';

import type { Car, Preset, PresetRevision, Visit } from '@pullbook/contracts';
import Link from 'next/link';
import { useState } from 'react';
import { Plate, Skeleton } from '../../../../../../components/marks/marks';
import { ProblemNote } from '../../../../../../components/marks/problem-note';
import { useCar } from '../../../../../../queries/cars/use-cars';
import { usePresets, useRevisionsOfPresets } from '../../../../../../queries/presets/use-presets';
import { useVisitsOfCar } from '../../../../../../queries/visits/use-visits';
import { RevisionsSide } from './revisions-side';
import { VisitsSide } from './visits-side';
import styles from './compare.module.css';

interface CompareScreenProps {
  readonly carId: string;
  /** Preset whose revisions are asked for; null for the car's visits. */
  readonly presetId: string | null;
}

/** What changed between then and now, on this car? */
export function CompareScreen({ carId, presetId }: CompareScreenProps) {
  const [kind, setKind] = useState<'visits' | 'revisions'>(presetId === null ? 'visits' : 'revisions');
  const car = useCar(carId);
  const presets = usePresets(carId);
  const visits = useVisitsOfCar(carId);
  const revisions = useRevisionsOfPresets((presets.data ?? []).map(({ id }) => id));
  const answers = [car, presets, visits, revisions];
  const error = answers.find((answer) => answer.error !== null)?.error ?? null;
  const isPending = answers.some((answer) => answer.isPending);
  const material = { presets: presets.data ?? [], revisionsOf: revisions.of };
  return (
    <div className="stack">
      <header className="row">
        <h1>Compare {car.data === undefined ? null : <CarLink car={car.data} />}</h1>
        <span className="grow" />
        <div className={styles.kinds} role="group" aria-label="Compare">
          <button type="button" aria-pressed={kind === 'visits'} onClick={() => setKind('visits')}>
            Visits
          </button>
          <button type="button" aria-pressed={kind === 'revisions'} onClick={() => setKind('revisions')}>
            Preset revisions
          </button>
        </div>
      </header>
      <ProblemNote error={error} />
      {isPending ? <Skeleton lines={8} label="Loading what is to be compared" /> : null}
      {isPending ? null : <Compared kind={kind} visits={visits.data ?? []} first={presetId} {...material} />}
    </div>
  );
}

interface ComparedProps {
  readonly kind: 'visits' | 'revisions';
  readonly visits: readonly Visit[];
  readonly presets: readonly Preset[];
  readonly revisionsOf: (presetId: string) => readonly PresetRevision[];
  readonly first: string | null;
}

function Compared({ kind, visits, first, ...material }: ComparedProps) {
  if (kind === 'visits') return <VisitsSide {...material} visits={visits} />;
  return <RevisionsSide {...material} first={first} />;
}

function CarLink({ car }: Readonly<{ car: Car }>) {
  return (
    <Link href={`/cars/${car.id}`} className={styles.car}>
      <Plate>{car.plate}</Plate> {car.model}
    </Link>
  );
}
