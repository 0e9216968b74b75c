'use client';

import { stages, type Board, type BoardCard, type StageCounts } from '@pullbook/contracts';
import { useDeferredValue, useMemo, useState } from 'react';
import { useSettled } from '../../../../components/form/use-settled';
import { useBoard } from '../../../../queries/board/use-board';
import { filterCards, type CardFilter } from './filter-cards';

/** A lane shows so many cards at first, and as many again when one comes to its end. */
const pageSize = 20;
/** As far as 'held up only' looks of its own accord in a yard that is larger than a page. */
const attentionSize = 100;
/** No more is to be had of one stage. */
const mostOfStage = 400;
const pauseMs = 150;

export interface BoardCards {
  readonly board: Board | undefined;
  /** Those that the filter lets through, as far as they were delivered. */
  readonly cards: readonly BoardCard[];
  /** How many there are at each stage, delivered or not; null where only those at hand can be counted. */
  readonly counts: StageCounts | null;
  readonly error: Error | null;
  readonly isPending: boolean;
  /** How many of each stage were looked at, where there are more; else null. */
  readonly lookedAt: number | null;
  readonly retry: () => void;
  /** Asks for more of every lane; null where no more is to be had at once. */
  readonly more: (() => void) | null;
}

/**
 * The cards of the board. What is at hand answers a filter at once; where the yard is larger than what is at hand the
 * server is asked for the rest that matches.
 */
export function useBoardCards(filter: CardFilter, collected: boolean): BoardCards {
  const [asked, setAsked] = useState(pageSize);
  const perStage = filter.onlyAttention ? Math.max(asked, attentionSize) : asked;
  const whole = useBoard({ collected, perStage, q: '', tuner: '' });
  const { answered, error } = useNarrowed(whole.data, filter, { collected, perStage });
  const shownFilter = useDeferredValue(filter);
  const cards = useMemo(() => {
    // The server has looked for the words already, in more than stands on the card.
    if (answered !== undefined) return filterCards(answered.cards, { ...shownFilter, text: '', tuner: '' });
    return filterCards(whole.data?.cards ?? [], shownFilter);
  }, [answered, whole.data, shownFilter]);
  const shown = answered ?? whole.data;
  return {
    board: whole.data,
    cards,
    counts: isCountable(filter, answered) ? (shown?.counts ?? null) : null,
    error: error ?? whole.error,
    isPending: whole.isPending,
    lookedAt: isComplete(shown) ? null : perStage,
    retry: () => void whole.refetch(),
    more: asked >= mostOfStage ? null : () => setAsked(Math.min(2 * asked, mostOfStage)),
  };
}

/** The server's answer to words and tuner, where what is at hand is not all there is; undefined until it is there. */
function useNarrowed(
  whole: Board | undefined,
  filter: CardFilter,
  rest: { readonly collected: boolean; readonly perStage: number },
): { answered: Board | undefined; error: Error | null } {
  const typed = { q: filter.text.trim(), tuner: filter.tuner };
  const words = useSettled(typed, pauseMs);
  const isWanted = !isComplete(whole) && (words.q !== '' || words.tuner !== '');
  const narrow = useBoard({ ...rest, ...words }, isWanted);
  const isOfThis = words.q === typed.q && words.tuner === typed.tuner && !narrow.isPlaceholderData;
  return { answered: isWanted && isOfThis ? narrow.data : undefined, error: narrow.error };
}

/** Whether the server's counts are those of what is shown: words that only this device looked for it did not count. */
function isCountable(filter: CardFilter, answered: Board | undefined): boolean {
  if (filter.onlyAttention) return false;
  return answered !== undefined || (filter.text.trim() === '' && filter.tuner === '');
}

/** Whether every visit that matches was delivered. */
function isComplete(board: Board | undefined): boolean {
  if (board === undefined) return true;
  return stages.every(
    (stage) => board.cards.filter((card) => card.stage === stage).length >= (board.counts[stage] ?? 0),
  );
}
