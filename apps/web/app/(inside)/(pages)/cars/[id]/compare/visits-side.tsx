'use client';

import type { Preset, PresetRevision, Visit } from '@pullbook/contracts';
import { useState } from 'react';
import { Empty, Skeleton } from '../../../../../../components/marks/marks';
import { ProblemNote } from '../../../../../../components/marks/problem-note';
import { stageNames } from '../../../../../../components/stage/stage-names';
import { sayDate } from '../../../../../../components/time/say-when';
import { useUnits } from '../../../../../../components/units/use-units';
import { visitNumber } from '../../../../../../components/visit/visit-number';
import { usePullsOfSessions } from '../../../../../../queries/pulls/use-pulls';
import { useTuningSessions } from '../../../../../../queries/tuning-sessions/use-tuning-sessions';
import { compareVisits, type VisitMaterial } from './compare-visits';
import { CompareTable } from './compare-table';
import { TwoChoices } from './two-choices';

interface VisitsSideProps {
  /** Newest first. */
  readonly visits: readonly Visit[];
  readonly presets: readonly Preset[];
  readonly revisionsOf: (presetId: string) => readonly PresetRevision[];
}

/** Any visit of the car beside any other. */
export function VisitsSide({ visits, presets, revisionsOf }: VisitsSideProps) {
  const units = useUnits();
  const [left, setLeft] = useState((visits[1] ?? visits[0])?.id);
  const [right, setRight] = useState(visits[0]?.id);
  const a = useMaterial(visits.find(({ id }) => id === left));
  const b = useMaterial(visits.find(({ id }) => id === right));
  if (left === undefined || right === undefined) return <Empty title="This car has not been here yet." />;
  const choices = visits.map((visit) => ({
    value: visit.id,
    label: `Visit ${visitNumber(visit.number)}, ${sayDate(visit.createdAt)}, ${stageNames[visit.stage]}`,
  }));
  return (
    <>
      <TwoChoices choices={choices} left={left} right={right} onLeft={setLeft} onRight={setRight} />
      <ProblemNote error={a.error ?? b.error} />
      {a.material === null || b.material === null ? (
        <Skeleton lines={6} label="Loading the pulls" />
      ) : (
        <CompareTable
          left={headOf(a.material)}
          right={headOf(b.material)}
          groups={compareVisits(a.material, b.material, { presets, revisionsOf }, units)}
          note="Figures are those of the last usable pull of each preset; the mean is over the usable pulls at the same duty and gate hold. Air and place are those of the last tuning session."
        />
      )}
    </>
  );
}

const headOf = ({ visit }: VisitMaterial): string => `Visit ${visitNumber(visit.number)}`;

/** A visit with its sessions and pulls; null until all of it is here. */
function useMaterial(visit: Visit | undefined): { material: VisitMaterial | null; error: Error | null } {
  const sessions = useTuningSessions(visit?.id ?? '', visit !== undefined);
  const pulls = usePullsOfSessions((sessions.data ?? []).map(({ id }) => id));
  const isHere = visit !== undefined && sessions.data !== undefined && !pulls.isPending;
  return {
    material: isHere ? { visit, sessions: sessions.data, pulls: pulls.pulls } : null,
    error: sessions.error ?? pulls.error,
  };
}
