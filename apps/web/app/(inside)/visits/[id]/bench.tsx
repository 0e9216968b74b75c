'use client';

import type { Car, Preset, TuningSession, Visit } from '@pullbook/contracts';
import dynamic from 'next/dynamic';
import { useState } from 'react';
import { Empty, Skeleton } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { usePresets } from '../../../../queries/presets/use-presets';
import { useKeepVisit } from '../../../../queries/visits/use-keep-visit';
import { PresetBench } from './preset-bench';
import { PresetTabs } from './preset-tabs';
import styles from './visit.module.css';

const PresetForm = dynamic(
  () => import('../../../../components/preset/preset-form').then((part) => part.PresetForm),
  { loading: () => <Skeleton lines={6} label="Opening the form" /> },
);

interface BenchProps {
  readonly visit: Visit;
  readonly session: TuningSession;
  readonly sessions: readonly TuningSession[];
  readonly car: Car;
}

/** The work itself: one preset after the other, pull by pull. */
export function Bench({ visit, session, sessions, car }: BenchProps) {
  const presets = usePresets(visit.carId);
  useKeepVisit(sessions, presets.data);
  const [chosenId, setChosenId] = useState<string | null>(null);
  const [isAdding, setAdding] = useState(false);
  const all = (presets.data ?? []).filter((preset) => preset.state !== 'replaced');
  const chosen = all.find((preset) => preset.id === chosenId) ?? firstToWorkOn(all);
  if (presets.data === undefined) {
    return (
      <main id="content" className={styles.page}>
        <ProblemNote error={presets.error} onRetry={() => void presets.refetch()} />
        {presets.isPending ? <Skeleton lines={6} label="Loading the presets" /> : null}
      </main>
    );
  }
  if (chosen === undefined || isAdding) {
    return (
      <main id="content" className={styles.page}>
        <div className={styles.form}>
          {chosen === undefined ? (
            <Empty title="This car has no preset yet.">
              <p>
                Agree the first one with the customer: what it is for, its target, and the ceiling that no
                pull may pass.
              </p>
            </Empty>
          ) : null}
          <PresetForm
            car={car}
            presets={all}
            onDone={(preset) => {
              setChosenId(preset.id);
              setAdding(false);
            }}
            {...(chosen === undefined ? {} : { onCancel: () => setAdding(false) })}
          />
        </div>
      </main>
    );
  }
  return (
    <main id="content" className={styles.bench}>
      <PresetTabs presets={all} chosenId={chosen.id} onChoose={setChosenId} onAdd={() => setAdding(true)} />
      <PresetBench
        key={chosen.id}
        preset={chosen}
        visit={visit}
        session={session}
        sessions={sessions}
        car={car}
      />
    </main>
  );
}

function firstToWorkOn(presets: readonly Preset[]): Preset | undefined {
  return presets.find((one) => one.state === 'draft' || one.state === 'on-test') ?? presets[0];
}
