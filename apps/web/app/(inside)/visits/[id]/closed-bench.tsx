'use client';

import type { Car, TuningSession, Visit } from '@pullbook/contracts';
import { useState } from 'react';
import { Empty, Skeleton } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { usePresets } from '../../../../queries/presets/use-presets';
import { ClosedNote } from './closed-note';
import { ClosedPreset } from './closed-preset';
import { PresetTabs } from './preset-tabs';
import styles from './visit.module.css';

interface ClosedBenchProps {
  readonly visit: Visit;
  readonly sessions: readonly TuningSession[];
  readonly car: Car;
}

/** A visit whose book is closed: what was driven and what it proved, to read. Nothing here could be refused. */
export function ClosedBench({ visit, sessions, car }: ClosedBenchProps) {
  const presets = usePresets(visit.carId);
  const [chosenId, setChosenId] = useState<string | null>(null);
  const all = (presets.data ?? []).filter((preset) => preset.state !== 'replaced');
  const chosen = all.find((preset) => preset.id === chosenId) ?? all[0];
  return (
    <main id="content" className={styles.bench}>
      <ClosedNote visit={visit} />
      <ProblemNote error={presets.error} onRetry={() => void presets.refetch()} />
      {presets.isPending ? <Skeleton lines={6} label="Loading the presets" /> : null}
      {presets.data !== undefined && chosen === undefined ? <Empty title="This car has no preset." /> : null}
      {chosen === undefined ? null : (
        <>
          <PresetTabs presets={all} chosenId={chosen.id} onChoose={setChosenId} />
          <ClosedPreset key={chosen.id} preset={chosen} sessions={sessions} car={car} />
        </>
      )}
    </main>
  );
}
