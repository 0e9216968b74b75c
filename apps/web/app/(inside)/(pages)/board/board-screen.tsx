'use client';

import type { Board, BoardCard, Stage } from '@pullbook/contracts';
import { useCallback, useState } from 'react';
import { ButtonLink } from '../../../../components/button/button';
import { HelpRow } from '../../../../components/help/help-row';
import { Empty, Skeleton } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useRemembered } from '../../../../components/remembered/use-remembered';
import { isToday, sayLongDay } from '../../../../components/time/say-when';
import { useMoveVisit } from '../../../../queries/visits/use-move-visit';
import { BoardControls } from './board-controls';
import { BoardLanes } from './board-lanes';
import { BoardTable } from './board-table';
import type { CardFilter } from './filter-cards';
import { useBoardCards, type BoardCards } from './use-board-cards';
import styles from './board.module.css';

const everything: CardFilter = { text: '', tuner: '', onlyAttention: false };
const views = ['lanes', 'table'] as const;

/** Where is every car, and what holds it up? */
export function BoardScreen() {
  const [filter, setFilter] = useState(everything);
  const [withCollected, setWithCollected] = useState(false);
  const [view, setView] = useRemembered('board-view', views, 'lanes');
  const shown = useBoardCards(filter, withCollected);
  const { board } = shown;
  const { mutate } = useMoveVisit();
  const moveCard = useCallback(
    (card: BoardCard, to: Stage) =>
      mutate({ visitId: card.visitId, plate: card.plate, revision: card.revision, from: card.stage, to }),
    [mutate],
  );
  return (
    <>
      <header className={styles.head}>
        <h1>Board</h1>
        <p className="soft">{board === undefined ? '' : sayCount(board)}</p>
        <span className="grow" />
        <ButtonLink href="/intake" kind="act">
          Take in a car
        </ButtonLink>
      </header>
      {board !== undefined && isNew(board) ? null : (
        <BoardControls
          tuners={board?.tuners ?? []}
          filter={filter}
          onFilter={setFilter}
          withCollected={withCollected}
          onWithCollected={setWithCollected}
          view={view}
          onView={setView}
        />
      )}
      <ProblemNote error={shown.error} onRetry={shown.retry} />
      {shown.isPending ? <Skeleton lines={8} label="Loading the board" /> : null}
      {board === undefined ? null : (
        <BoardView
          {...{ board, shown, view, withCollected }}
          onMove={moveCard}
          isPartial={filter.onlyAttention && shown.lookedAt !== null}
        />
      )}
    </>
  );
}

interface BoardViewProps {
  readonly board: Board;
  readonly shown: BoardCards;
  readonly view: (typeof views)[number];
  readonly withCollected: boolean;
  /** Whether it has to be said that not every car was looked at. */
  readonly isPartial: boolean;
  readonly onMove: (card: BoardCard, to: Stage) => void;
}

/** The cars as lanes or as a table; where there is none, what to do first. */
function BoardView({ board, shown, view, withCollected, isPartial, onMove }: BoardViewProps) {
  const { cards, counts, more } = shown;
  if (board.cards.length === 0) {
    return (
      <Empty title="No car is in the house, and none is booked.">
        <p>Take in the first one: customer, car, wishes and time on one page.</p>
        <ButtonLink href="/intake" kind="act">
          Take in a car
        </ButtonLink>
      </Empty>
    );
  }
  const parts = { cards, counts, onMove, onMore: more };
  return (
    <>
      <p className={isPartial ? 'soft' : 'unseen'} role="status">
        {sayShown(shown, board)}
      </p>
      {view === 'lanes' ? <BoardLanes {...parts} withCollected={withCollected} /> : <BoardTable {...parts} />}
      <HelpRow words={['target', 'tolerance', 'ceiling', 'pull', 'predicted_range', 'drift']} />
    </>
  );
}

/** A book without any visit has nothing to search. */
const isNew = ({ cards, counts }: Board): boolean =>
  cards.length === 0 && Object.values(counts).every((count) => count === 0);

function sayCount(board: Board): string {
  const now = new Date();
  const { arrived = 0, ready = 0, ...others } = board.counts;
  const inHouse = arrived + (others['on-test'] ?? 0) + (others['to-sign-off'] ?? 0) + ready;
  const promised = board.cards.filter(
    (card) => card.stage !== 'collected' && card.promisedAt !== null && isToday(card.promisedAt, now),
  ).length;
  return `${sayLongDay(now)} · ${inHouse} ${inHouse === 1 ? 'car' : 'cars'} in, ${promised} promised today`;
}

function sayShown({ cards, lookedAt }: BoardCards, board: Board): string {
  const total = Object.values(board.counts).reduce((sum, count) => sum + count, 0);
  const all = `${cards.length} of ${total} cars shown`;
  return lookedAt === null ? all : `${all}, of the ${lookedAt} of each stage that are wanted soonest`;
}
