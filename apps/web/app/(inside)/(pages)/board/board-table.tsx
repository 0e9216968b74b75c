'use client';

import type { BoardCard, Stage, StageCounts } from '@pullbook/contracts';
import Link from 'next/link';
import { noneIf } from '../../../../components/list/none-if';
import { Plate } from '../../../../components/marks/marks';
import { stageNames } from '../../../../components/stage/stage-names';
import { sayWhen } from '../../../../components/time/say-when';
import { useUnits } from '../../../../components/units/use-units';
import { LaneMore } from './lane-more';
import { MoveMenu } from './move-menu';
import styles from './board.module.css';

interface BoardTableProps {
  readonly cards: readonly BoardCard[];
  readonly counts: StageCounts | null;
  readonly onMove: (card: BoardCard, to: Stage) => void;
  readonly onMore: (() => void) | null;
}

/** The same cards as lines, for yards with many. */
export function BoardTable({ cards, counts, onMove, onMore }: BoardTableProps) {
  const count = Object.values(counts ?? {}).reduce((sum, one) => sum + one, 0);
  const now = new Date();
  const units = useUnits();
  return (
    <>
      <div className={`sheet ${styles.tableSheet}`} tabIndex={0} role="region" aria-label="Cars as a table">
        <table className="stacks">
          <thead>
            <tr>
              {[
                'Plate',
                'Car',
                'Customer',
                'Stage',
                'Tuner',
                'Bay',
                'Booked',
                'Promised',
                'What holds it up',
              ].map((name) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ))}
              <th scope="col">
                <span className="unseen">Move</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {cards.map((card) => (
              <tr key={card.visitId}>
                <td>
                  <Link href={`/visits/${card.visitId}`} className={styles.plateLink}>
                    <Plate>{card.plate}</Plate>
                  </Link>
                </td>
                <td>{card.model}</td>
                <td>{card.customerName}</td>
                <td>{stageNames[card.stage]}</td>
                <td data-none={noneIf(card.tunerName === null)}>{card.tunerName ?? '–'}</td>
                <td data-none={noneIf(card.bay === null)}>{card.bay ?? '–'}</td>
                <td data-name="booked" data-none={noneIf(card.bookedFor === null)}>
                  {card.bookedFor === null ? '–' : sayWhen(card.bookedFor, now)}
                </td>
                <td data-name="promised" data-none={noneIf(card.promisedAt === null)}>
                  {card.promisedAt === null ? '–' : sayWhen(card.promisedAt, now)}
                </td>
                <td>
                  <span className={card.needsAttention ? styles.statusMind : styles.status}>
                    {card.needsAttention ? <span aria-hidden="true">▲ </span> : null}
                    {units.say(card.status)}
                  </span>
                </td>
                <td>
                  <MoveMenu card={card} onMove={onMove} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <LaneMore shownCount={cards.length} count={count} place="all stages" onMore={onMore} />
    </>
  );
}
