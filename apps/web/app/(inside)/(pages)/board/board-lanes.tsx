'use client';

import { stages, type BoardCard as Card, type Stage, type StageCounts } from '@pullbook/contracts';
import { useState, type DragEvent } from 'react';
import { stageNames } from '../../../../components/stage/stage-names';
import { BoardCard } from './board-card';
import { LaneMore } from './lane-more';
import styles from './board.module.css';

interface BoardLanesProps {
  readonly cards: readonly Card[];
  /** How many there are at each stage, delivered or not; null where only those at hand can be counted. */
  readonly counts: StageCounts | null;
  readonly withCollected: boolean;
  readonly onMove: (card: Card, to: Stage) => void;
  readonly onMore: (() => void) | null;
}

/** One lane for each stage, in the order of the work. */
export function BoardLanes({ cards, counts, withCollected, onMove, onMore }: BoardLanesProps) {
  const shown = stages.filter((stage) => withCollected || stage !== 'collected');
  const [over, setOver] = useState<Stage | null>(null);
  const drop = (event: DragEvent, stage: Stage) => {
    event.preventDefault();
    setOver(null);
    const id = event.dataTransfer.getData('text/plain');
    const card = cards.find((one) => one.visitId === id);
    if (card !== undefined && card.stage !== stage) onMove(card, stage);
  };
  return (
    <div className={styles.lanes} style={{ '--lanes': shown.length } as React.CSSProperties}>
      {shown.map((stage) => {
        const here = cards.filter((card) => card.stage === stage);
        const count = Math.max(counts?.[stage] ?? 0, here.length);
        return (
          <section
            key={stage}
            aria-labelledby={`lane-${stage}`}
            className={`${styles.lane} ${over === stage ? styles.laneOver : ''}`}
            onDragOver={(event) => {
              event.preventDefault();
              setOver(stage);
            }}
            onDragLeave={(event) => {
              if (event.target === event.currentTarget) setOver(null);
            }}
            onDrop={(event) => drop(event, stage)}
          >
            <h2 id={`lane-${stage}`}>
              <span>{stageNames[stage]}</span>
              <span className="soft">{count}</span>
            </h2>
            <ul>
              {here.map((card) => (
                <BoardCard key={card.visitId} card={card} onMove={onMove} />
              ))}
            </ul>
            <LaneMore shownCount={here.length} count={count} place={stageNames[stage]} onMore={onMore} />
          </section>
        );
      })}
    </div>
  );
}
