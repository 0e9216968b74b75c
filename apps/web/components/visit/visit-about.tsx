'use client';

import type { Visit } from '@pullbook/contracts';
import Link from 'next/link';
import { useCar } from '../../queries/cars/use-cars';
import { usePresets } from '../../queries/presets/use-presets';
import { useVisit } from '../../queries/visits/use-visits';
import { ButtonLink } from '../button/button';
import { Plate, Skeleton } from '../marks/marks';
import { NotLoaded } from '../marks/not-loaded';
import { ProblemNote } from '../marks/problem-note';
import { presetStateNames, presetStateShapes } from '../preset/preset-state-names';
import { useUnits } from '../units/use-units';
import { FactsToRead } from './facts-to-read';
import { isClosed } from './is-closed';
import { StageMoves } from './stage-moves';
import { VisitFacts } from './visit-facts';
import styles from './visit-about.module.css';

/** How the visit stands: stage, wishes, times, presets to read, papers. Nothing here changes a tuning value. */
export function VisitAbout({ visitId }: Readonly<{ visitId: string }>) {
  const visit = useVisit(visitId);
  if (visit.data === undefined) {
    return (
      <main id="content" className={styles.page}>
        <NotLoaded what="visit" error={visit.error} onRetry={() => void visit.refetch()} />
        {visit.isPending ? <Skeleton lines={8} label="Loading the visit" /> : null}
      </main>
    );
  }
  return (
    <main id="content" className={styles.page}>
      <StageMoves visit={visit.data} />
      {isClosed(visit.data) ? (
        <p className="soft">This visit is closed. For more work on this car, book a new visit.</p>
      ) : null}
      <div className={styles.two}>
        {visit.data.stage === 'collected' ? (
          <FactsToRead visit={visit.data} />
        ) : (
          <VisitFacts key={visit.data.revision} visit={visit.data} />
        )}
        <div className="stack">
          <CarAndCustomer visit={visit.data} />
          <PresetsToRead carId={visit.data.carId} />
        </div>
      </div>
    </main>
  );
}

function CarAndCustomer({ visit }: Readonly<{ visit: Visit }>) {
  const car = useCar(visit.carId).data;
  return (
    <section className="sheet stack" aria-labelledby="who">
      <h2 id="who">Car and customer</h2>
      <p>
        <Link href={`/cars/${visit.carId}`}>
          <Plate>{visit.plate}</Plate>
        </Link>{' '}
        {visit.model}
        {car?.controllerName ? `, ${car.controllerName}` : ''}
      </p>
      <p>
        <Link href={`/customers/${visit.customerId}`}>{visit.customerName}</Link>
        {visit.customerPhone === null ? null : (
          <>
            , <a href={`tel:${visit.customerPhone.replaceAll(/\s/g, '')}`}>{visit.customerPhone}</a>
          </>
        )}
      </p>
      <div className="row">
        <ButtonLink href={`/api/v1/visits/${visit.id}/job-sheet.pdf`} outside>
          Job sheet (PDF)
        </ButtonLink>
        <ButtonLink href={`/visits/${visit.id}/sign-off`}>Sign-off and report</ButtonLink>
      </div>
    </section>
  );
}

function PresetsToRead({ carId }: Readonly<{ carId: string }>) {
  const units = useUnits();
  const presets = usePresets(carId);
  const all = (presets.data ?? []).filter((preset) => preset.state !== 'replaced');
  return (
    <section className="sheet stack" aria-labelledby="presets">
      <h2 id="presets">Presets</h2>
      {presets.isPending ? <Skeleton lines={2} label="Loading the presets" /> : null}
      <ProblemNote error={presets.error} />
      {presets.data !== undefined && all.length === 0 ? <p className="soft">None asked for yet.</p> : null}
      <ul className={styles.presets}>
        {all.map((preset) => (
          <li key={preset.id}>
            <p>
              <b>
                {preset.slot} {preset.name}
              </b>{' '}
              <span aria-hidden="true">{presetStateShapes[preset.state]} </span>
              {presetStateNames[preset.state]}
            </p>
            <p className="soft small">
              {preset.targetKpa === null ? 'no target agreed' : `target ${units.write(preset.targetKpa)}`}
              {preset.ceilingKpa === null
                ? ', no ceiling agreed'
                : `, ceiling ${units.write(preset.ceilingKpa)}`}
              {preset.purpose === '' ? '' : `. ${preset.purpose}`}
            </p>
            {preset.missing.length === 0 ? null : (
              <p className="small">Missing: {units.say(preset.missing.join('; '))}</p>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
