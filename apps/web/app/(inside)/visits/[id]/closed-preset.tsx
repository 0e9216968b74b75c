'use client';

import type { Car, Preset, TuningSession } from '@pullbook/contracts';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { PeakStrip } from '../../../../components/pictures/peak-strip';
import { ProofLines } from '../../../../components/preset/proof-lines';
import { useControllers } from '../../../../queries/controllers/use-controllers';
import { usePulls } from '../../../../queries/pulls/use-pulls';
import { PullList } from './pull-list';
import { ResponsePart } from './response-part';
import { sayStored } from './say-stored';
import { stripOf } from './strip-of';
import styles from './visit.module.css';

interface ClosedPresetProps {
  readonly preset: Preset;
  readonly sessions: readonly TuningSession[];
  readonly car: Car;
}

/** One preset in a closed visit: what it stores, what its pulls promise, and every pull of the visit. */
export function ClosedPreset({ preset, sessions, car }: ClosedPresetProps) {
  const { pulls, isPending, error } = usePulls(
    sessions.map((one) => one.id),
    preset.id,
  );
  const controllers = useControllers();
  const controller = controllers.data?.find((one) => one.id === car.controllerId) ?? null;
  const goal = { preset, car, pulls, advice: null };
  return (
    <div className={styles.left}>
      <section className={`sheet ${styles.stripSheet}`} aria-label="Peak strip">
        <ProofLines preset={preset} />
        <p className="small">{sayStored(preset)}</p>
        <PeakStrip form="medium" figures={stripOf(goal)} />
      </section>
      <section className={`sheet ${styles.listSheet}`} aria-labelledby="pulls">
        <ProblemNote error={error} />
        <PullList pulls={pulls} isPending={isPending} visitId={null} />
        <ResponsePart controller={controller} {...goal} />
      </section>
    </div>
  );
}
