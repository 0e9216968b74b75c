'use client';

import type { Preset, PresetRevision } from '@pullbook/contracts';
import Link from 'next/link';
import { Dialog } from '../../../../../components/dialog/dialog';
import { Skeleton } from '../../../../../components/marks/marks';
import { ProblemNote } from '../../../../../components/marks/problem-note';
import { sayDate } from '../../../../../components/time/say-when';
import { useUnits } from '../../../../../components/units/use-units';
import { usePresetRevisions } from '../../../../../queries/presets/use-presets';

interface RevisionsDialogProps {
  readonly preset: Preset;
  readonly onClose: () => void;
}

/** Every revision of a preset as it was written, newest first. */
export function RevisionsDialog({ preset, onClose }: RevisionsDialogProps) {
  const units = useUnits();
  const revisions = usePresetRevisions(preset.id);
  const pressure = (kpa: number | null) => (kpa === null ? '–' : units.figure(kpa));
  const newestFirst = [...(revisions.data ?? [])].sort((a, b) => b.revision - a.revision);
  return (
    <Dialog title={`Revisions of ${preset.name}`} onClose={onClose} wide>
      <ProblemNote error={revisions.error} onRetry={() => void revisions.refetch()} />
      {revisions.isPending ? <Skeleton lines={4} label="Loading the revisions" /> : null}
      {newestFirst.length > 1 ? (
        <p>
          <Link href={`/cars/${preset.carId}/compare?preset=${preset.id}`}>Compare two revisions</Link>
        </p>
      ) : null}
      {newestFirst.length === 0 ? null : (
        <div className="scroll" tabIndex={0} role="region" aria-label="Revisions">
          <table className="stacks">
            <thead>
              <tr>
                <th scope="col">Revision</th>
                <th scope="col" className="n">
                  Target {units.pressureWord}
                </th>
                <th scope="col" className="n">
                  Ceiling {units.pressureWord}
                </th>
                <th scope="col" className="n">
                  Duty %
                </th>
                <th scope="col">By</th>
                <th scope="col">Why</th>
              </tr>
            </thead>
            <tbody>
              {newestFirst.map((one) => (
                <RevisionRow key={one.revision} revision={one} pressure={pressure} />
              ))}
            </tbody>
          </table>
        </div>
      )}
    </Dialog>
  );
}

interface RevisionRowProps {
  readonly revision: PresetRevision;
  readonly pressure: (kpa: number | null) => string;
}

function RevisionRow({ revision, pressure }: RevisionRowProps) {
  return (
    <tr>
      <td data-name="Revision">{revision.revision}</td>
      <td className="n" data-name="target">
        {pressure(revision.targetKpa)}
      </td>
      <td className="n" data-name="ceiling">
        {pressure(revision.ceilingKpa)}
      </td>
      <td className="n" data-name="duty, %">
        {revision.dutyPct ?? '–'}
      </td>
      <td>
        {revision.madeBy}, {sayDate(revision.madeAt)}
      </td>
      <td>{revision.reason}</td>
    </tr>
  );
}
