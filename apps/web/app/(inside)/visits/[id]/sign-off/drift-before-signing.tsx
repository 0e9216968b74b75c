'use client';

import { Mind } from '../../../../../components/marks/marks';
import { DriftLink } from '../../../../../components/preset/drift-link';
import { usePreset } from '../../../../../queries/presets/use-presets';

/** Whoever signs over a standing drift alarm is told what the signature does to it. */
export function DriftBeforeSigning({ presetId }: Readonly<{ presetId: string }>) {
  const { data } = usePreset(presetId);
  if (data === undefined || data.drift === null) return null;
  return (
    <Mind title="A drift alarm stands">
      <p>{data.drift.text}</p>
      <p>
        Signing off takes the pulls of this visit as what later ones are held against, and closes the alarm.
      </p>
      <DriftLink carId={data.carId} presetId={presetId} drift={data.drift} />
    </Mind>
  );
}
