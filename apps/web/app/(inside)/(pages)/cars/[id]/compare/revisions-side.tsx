'use client';

import type { Preset, PresetRevision } from '@pullbook/contracts';
import { useState } from 'react';
import { Empty } from '../../../../../../components/marks/marks';
import { sayDate } from '../../../../../../components/time/say-when';
import { useUnits } from '../../../../../../components/units/use-units';
import { compareRevisions } from './compare-revisions';
import { CompareTable } from './compare-table';
import { TwoChoices } from './two-choices';

interface RevisionsSideProps {
  readonly presets: readonly Preset[];
  readonly revisionsOf: (presetId: string) => readonly PresetRevision[];
  /** Preset to begin with. */
  readonly first: string | null;
}

interface Listed {
  readonly key: string;
  readonly label: string;
  readonly head: string;
  readonly revision: PresetRevision;
  readonly presetId: string;
}

/** Any revision of any preset of the car beside any other. */
export function RevisionsSide({ presets, revisionsOf, first }: RevisionsSideProps) {
  const units = useUnits();
  const listed = presets.flatMap((preset) => listOf(preset, revisionsOf(preset.id)));
  const begin = listed.filter(({ presetId }) => first === null || presetId === first);
  const newest = begin.at(-1)?.key ?? '';
  const [left, setLeft] = useState(begin.at(-2)?.key ?? newest);
  const [right, setRight] = useState(newest);
  const [a, b] = [left, right].map((key) => listed.find((one) => one.key === key));
  if (a === undefined || b === undefined) return <Empty title="This car has no preset yet." />;
  const choices = listed.map(({ key, label }) => ({ value: key, label }));
  return (
    <>
      <TwoChoices choices={choices} left={left} right={right} onLeft={setLeft} onRight={setRight} />
      <CompareTable
        left={a.head}
        right={b.head}
        groups={compareRevisions(a.revision, b.revision, units)}
        note={b.revision.reason === '' ? null : `Reason given for the second: ${b.revision.reason}`}
      />
    </>
  );
}

/** A preset's revisions, the oldest first. */
function listOf(preset: Preset, revisions: readonly PresetRevision[]): Listed[] {
  return [...revisions]
    .sort((a, b) => a.revision - b.revision)
    .map((revision) => ({
      key: `${preset.id}/${revision.revision}`,
      label: `${preset.slot} ${revision.name}, revision ${revision.revision}, ${sayDate(revision.madeAt)}`,
      head: `${revision.name}, revision ${revision.revision}`,
      revision,
      presetId: preset.id,
    }));
}
