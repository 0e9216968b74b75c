'use client';

import { stages, type BoardCard as Card, type Stage } from '@pullbook/contracts';
import { useState, type DragEvent } from 'react';
import { stageNames } from '../../../../components/stage/stage-names';
import { BoardCard } from './board-card';
import styles from './board.module.css';

interface BoardLanesProps {
  readonly cards: readonly Card[];
  readonly withCollected: boolean;
  readonly onMove: (card: Card, to: Stage) => void;
}

/** One lane for each stage, in the order of the work. */
export function BoardLanes({ cards, withCollected, onMove }: BoardLanesProps) {
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
              <span className="soft">{here.length}</span>
            </h2>
            <ul>
              {here.map((card) => (
                <BoardCard key={card.visitId} card={card} onMove={onMove} />
              ))}
            </ul>
          </section>
        );
      })}
    </div>
  );
}
