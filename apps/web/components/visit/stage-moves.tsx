'use client';

import { stages, type Visit } from '@pullbook/contracts';
import { useMoveVisit } from '../../queries/visits/use-move-visit';
import { stageNames } from '../stage/stage-names';
import { isClosed } from './is-closed';
import styles from './visit-about.module.css';

/** The stages in order; pressing one moves the visit there. A closed visit is handed over, and goes nowhere else. */
export function StageMoves({ visit }: Readonly<{ visit: Visit }>) {
  const move = useMoveVisit();
  const shown = move.isPending ? move.variables.to : visit.stage;
  const reached = stages.indexOf(shown);
  return (
    <div className={styles.stages} role="group" aria-label="Stage of the visit">
      {stages.map((stage, index) => (
        <button
          key={stage}
          type="button"
          aria-pressed={stage === shown}
          disabled={move.isPending || (isClosed(visit) && !isClosed({ stage }))}
          onClick={() => {
            if (stage === visit.stage) return;
            move.mutate({
              visitId: visit.id,
              plate: visit.plate,
              revision: visit.revision,
              from: visit.stage,
              to: stage,
            });
          }}
        >
          <span aria-hidden="true">{index < reached ? '✓' : index === reached ? '●' : '○'}</span>
          {stageNames[stage]}
        </button>
      ))}
    </div>
  );
}
