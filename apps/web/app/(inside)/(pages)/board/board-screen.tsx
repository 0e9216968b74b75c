'use client';

import type { Board, BoardCard, Stage } from '@pullbook/contracts';
import { useMemo, useState } from 'react';
import { ButtonLink } from '../../../../components/button/button';
import { Empty, Skeleton } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useRemembered } from '../../../../components/remembered/use-remembered';
import { isToday, sayLongDay } from '../../../../components/time/say-when';
import { useBoard } from '../../../../queries/board/use-board';
import { useMoveVisit } from '../../../../queries/visits/use-move-visit';
import { BoardControls } from './board-controls';
import { BoardLanes } from './board-lanes';
import { BoardTable } from './board-table';
import { filterCards, type CardFilter } from './filter-cards';
import styles from './board.module.css';

const everything: CardFilter = { text: '', tuner: '', onlyAttention: false };
const views = ['lanes', 'table'] as const;

/** Where is every car, and what holds it up? */
export function BoardScreen() {
  const [filter, setFilter] = useState(everything);
  const [withCollected, setWithCollected] = useState(false);
  const [view, setView] = useRemembered('board-view', views, 'lanes');
  const board = useBoard(withCollected);
  const move = useMoveVisit();
  const all = board.data?.cards;
  const cards = useMemo(() => filterCards(all ?? [], filter), [all, filter]);
  const moveCard = (card: BoardCard, to: Stage) =>
    move.mutate({ visitId: card.visitId, plate: card.plate, revision: card.revision, from: card.stage, to });
  return (
    <>
      <header className={styles.head}>
        <h1>Board</h1>
        <p className="soft">{board.data === undefined ? '' : sayCount(board.data)}</p>
        <span className="grow" />
        <ButtonLink href="/intake" kind="act">
          Take in a car
        </ButtonLink>
      </header>
      <BoardControls
        cards={all ?? []}
        filter={filter}
        onFilter={setFilter}
        withCollected={withCollected}
        onWithCollected={setWithCollected}
        view={view}
        onView={setView}
      />
      <ProblemNote error={board.error} onRetry={() => void board.refetch()} />
      {board.isPending ? <Skeleton lines={8} label="Loading the board" /> : null}
      {all !== undefined && all.length === 0 ? (
        <Empty title="No car is in the house, and none is booked.">
          <p>Take in the first one: customer, car, wishes and time on one page.</p>
          <ButtonLink href="/intake" kind="act">
            Take in a car
          </ButtonLink>
        </Empty>
      ) : null}
      {all !== undefined && all.length > 0 ? (
        <>
          <p className="unseen" role="status">{`${cards.length} of ${all.length} cars shown`}</p>
          {view === 'lanes' ? (
            <BoardLanes cards={cards} withCollected={withCollected} onMove={moveCard} />
          ) : (
            <BoardTable cards={cards} onMove={moveCard} />
          )}
        </>
      ) : null}
    </>
  );
}

function sayCount(board: Board): string {
  const now = new Date();
  const inHouse = board.cards.filter((card) => card.stage !== 'booked' && card.stage !== 'collected').length;
  const promised = board.cards.filter(
    (card) => card.stage !== 'collected' && card.promisedAt !== null && isToday(card.promisedAt, now),
  ).length;
  return `${sayLongDay(now)} · ${inHouse} ${inHouse === 1 ? 'car' : 'cars'} in, ${promised} promised today`;
}
