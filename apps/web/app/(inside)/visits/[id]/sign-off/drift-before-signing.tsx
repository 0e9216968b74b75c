'use client';

import Link from 'next/link';
import { Mind } from '../../../../../components/marks/marks';
import { usePreset } from '../../../../../queries/presets/use-presets';

/** Whoever signs over a standing drift alarm is told what the signature does to it. */
export function DriftBeforeSigning({ presetId }: Readonly<{ presetId: string }>) {
  const { data } = usePreset(presetId);
  if (data === undefined || data.drift === null) return null;
  return (
    <Mind title="A drift alarm stands">
      <p>{data.drift.text}</p>
      <p>
        Signing off takes the pulls of this visit at the stored settings, two or more, as what later ones are
        held against, and closes the alarm. See{' '}
        <Link href={`/cars/${data.carId}/outlook?preset=${presetId}`}>the charts</Link> first.
      </p>
    </Mind>
  );
}
