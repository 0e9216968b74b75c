import type { Board, Stage, Visit } from '@pullbook/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useRef } from 'react';
import { useIntentKey } from '../../client/intent-key';
import { send } from '../../client/request';
import { useNotices } from '../../components/notices/notices';
import { stageNames } from '../../components/stage/stage-names';

export interface Move {
  readonly visitId: string;
  readonly plate: string;
  readonly revision: number;
  readonly from: Stage;
  readonly to: Stage;
}

/** A move of this device: the revision that it was made on, and the one that it made. */
interface OwnMove {
  readonly from: number;
  readonly made: number;
}

/** Moves a visit to another stage; the board shows it at once and puts it back, with the reason, if refused. */
export function useMoveVisit() {
  const client = useQueryClient();
  const notices = useNotices();
  const intent = useIntentKey();
  const ownMoves = useRef(new Map<string, OwnMove>());
  return useMutation({
    // One after the other: a card that is moved on before the board was read anew goes on from its own last move.
    scope: { id: 'moves' },
    mutationFn: ({ visitId, revision: seen, to }: Move) => {
      const own = ownMoves.current.get(visitId);
      const revision = own?.from === seen ? own.made : seen;
      return send<Visit>('POST', `/visits/${visitId}/stage`, {
        body: { stage: to },
        ifMatch: revision,
        idempotencyKey: intent.keyFor({ visitId, revision, to }),
      });
    },
    onMutate: async (move) => {
      await client.cancelQueries({ queryKey: ['board'] });
      const before = client.getQueriesData<Board>({ queryKey: ['board'] });
      client.setQueriesData<Board>({ queryKey: ['board'] }, (board) => board && withMoved(board, move));
      return { before };
    },
    onSuccess: (visit, move) => {
      intent.done();
      ownMoves.current.set(move.visitId, { from: move.revision, made: visit.revision });
      notices.done(`${move.plate} moved to ${stageNames[move.to]}.`);
    },
    onError: (error, move, held) => {
      for (const [key, board] of held?.before ?? []) client.setQueryData(key, board);
      notices.mind(`${move.plate} went back to ${stageNames[move.from]}. ${error.message}`);
    },
    onSettled: () => {
      for (const root of ['board', 'visits']) void client.invalidateQueries({ queryKey: [root] });
    },
  });
}

function withMoved(board: Board, move: Move): Board {
  const cards = board.cards.map((card) =>
    card.visitId === move.visitId ? { ...card, stage: move.to } : card,
  );
  const countOf = (stage: Stage): number => board.counts[stage] ?? 0;
  const counts = {
    ...board.counts,
    [move.from]: Math.max(0, countOf(move.from) - 1),
    [move.to]: countOf(move.to) + 1,
  };
  return { ...board, cards, counts };
}
