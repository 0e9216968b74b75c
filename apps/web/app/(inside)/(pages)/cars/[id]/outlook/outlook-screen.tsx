'use client';

import type { Preset } from '@pullbook/contracts';
import Link from 'next/link';
import { Empty, Plate, Skeleton } from '../../../../../../components/marks/marks';
import { ProblemNote } from '../../../../../../components/marks/problem-note';
import { presetStateNames, presetStateShapes } from '../../../../../../components/preset/preset-state-names';
import { useCar } from '../../../../../../queries/cars/use-cars';
import { useOutlook } from '../../../../../../queries/outlook/use-outlook';
import { usePresets } from '../../../../../../queries/presets/use-presets';
import { DriftPart } from './drift-part';
import { ForecastPart } from './forecast-part';
import { OutlookPulls } from './outlook-pulls';
import styles from './outlook.module.css';

interface OutlookScreenProps {
  readonly carId: string;
  /** Id of the preset that the address names. */
  readonly asked: string | null;
}

/** Has a preset drifted since it was proven, and what will it do in other weather, gear and height? */
export function OutlookScreen({ carId, asked }: OutlookScreenProps) {
  const presets = usePresets(carId);
  const standing = (presets.data ?? []).filter(({ state }) => state !== 'replaced');
  const chosen = standing.find(({ id }) => id === asked) ?? standing[0];
  return (
    <div className={styles.page}>
      <Head carId={carId} />
      <ProblemNote error={presets.error} onRetry={() => void presets.refetch()} />
      {presets.isPending ? <Skeleton lines={8} label="Loading the presets" /> : null}
      {presets.data !== undefined && chosen === undefined ? (
        <Empty title="No preset yet.">
          <p>
            Drift and forecast come from the pulls of a preset: add the first one on the car&rsquo;s page.
          </p>
        </Empty>
      ) : null}
      {chosen === undefined ? null : (
        <>
          <PresetLinks carId={carId} presets={standing} chosenId={chosen.id} />
          <ChosenPreset preset={chosen} />
        </>
      )}
    </div>
  );
}

function Head({ carId }: Readonly<{ carId: string }>) {
  const { data } = useCar(carId);
  return (
    <header className="row">
      <h1>Drift and forecast {data === undefined ? null : <Plate>{data.plate}</Plate>}</h1>
      <Link href={`/cars/${carId}`}>{data === undefined ? 'To the car' : data.model}</Link>
    </header>
  );
}

interface PresetLinksProps {
  readonly carId: string;
  readonly presets: readonly Preset[];
  readonly chosenId: string;
}

function PresetLinks({ carId, presets, chosenId }: PresetLinksProps) {
  return (
    <nav className={styles.tabs} aria-label="Presets">
      {presets.map((preset) => (
        <Link
          key={preset.id}
          href={`/cars/${carId}/outlook?preset=${preset.id}`}
          aria-current={preset.id === chosenId ? 'page' : undefined}
        >
          <b>
            {preset.slot} {preset.name}
          </b>
          <span className="small">
            <span aria-hidden="true">{presetStateShapes[preset.state]} </span>
            {presetStateNames[preset.state]}
            {preset.drift === null ? '' : ', ▲ drift'}
          </span>
        </Link>
      ))}
    </nav>
  );
}

function ChosenPreset({ preset }: Readonly<{ preset: Preset }>) {
  const outlook = useOutlook(preset.id);
  if (outlook.data === undefined) {
    return (
      <>
        <ProblemNote error={outlook.error} onRetry={() => void outlook.refetch()} />
        {outlook.isPending ? <Skeleton lines={8} label="Loading drift and forecast" /> : null}
      </>
    );
  }
  return (
    <>
      <DriftPart outlook={outlook.data} />
      <ForecastPart outlook={outlook.data} preset={preset} />
      <OutlookPulls outlook={outlook.data} />
    </>
  );
}
