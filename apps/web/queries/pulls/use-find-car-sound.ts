import { useMutation } from '@tanstack/react-query';
import { enqueue } from '../../offline/enqueue';
import { idMadeBy } from '../../offline/outbox-order';
import type { SeenPull } from '../../offline/pulls-seen';
import { useSignedInMe } from '../people/use-me';

interface LookedOver {
  /** The last pull before the car was looked over. */
  readonly pull: SeenPull;
  readonly note: string;
}

/** Says that the car was looked over after a pull and nothing wrong was found: on this device the advice goes on at once. */
export function useFindCarSound(visitId: string) {
  const me = useSignedInMe();
  return useMutation({
    networkMode: 'always',
    mutationFn: ({ pull, note }: LookedOver) =>
      enqueue({
        memberId: me.member.id,
        visitId,
        path: `/pulls/${pull.unsent === true ? idMadeBy(pull.id) : pull.id}/found-sound`,
        body: { note },
        label: `Car looked over after pull ${pull.number} and found sound${note === '' ? '' : `: ${note}`}`,
        shows: () => ({ foundSound: { pullId: pull.id, note, by: me.member.name } }),
      }),
  });
}
