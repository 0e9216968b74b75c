import type { Board } from '@pullbook/contracts';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { queryText } from '../../client/query-text';
import { get } from '../../client/request';

export interface BoardQuestion {
  /** Whether cars that have left are wanted, too. */
  readonly collected: boolean;
  /** Most cards of each stage. */
  readonly perStage: number;
  readonly q: string;
  /** Name of a tuner, '' for everybody's. */
  readonly tuner: string;
}

export const boardQueryOptions = (question: BoardQuestion) =>
  queryOptions({
    queryKey: ['board', question],
    queryFn: ({ signal }) => get<Board>(`/board${queryText({ ...question })}`, signal),
    placeholderData: (before) => before,
  });

/** The visits that are in the house or booked, those wanted soonest first; with `collected` those that have left, too. */
export const useBoard = (question: BoardQuestion, enabled = true) =>
  useQuery({ ...boardQueryOptions(question), enabled });
