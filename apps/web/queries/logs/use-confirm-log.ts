import type { Log, LogConfirm } from '@pullbook/contracts';
import { useMutation } from '@tanstack/react-query';
import { enqueue } from '../../offline/enqueue';
import { useSignedInMe } from '../people/use-me';

interface Confirm {
  readonly log: Log;
  readonly input: LogConfirm;
}

/** Takes found pulls of a log into the book, with the duty that was set for them. */
export function useConfirmLog(visitId: string) {
  const me = useSignedInMe();
  return useMutation({
    networkMode: 'always',
    mutationFn: ({ log, input }: Confirm) =>
      enqueue({
        memberId: me.member.id,
        visitId,
        path: `/logs/${log.id}/pulls`,
        body: input,
        label: `${input.indexes.length === 1 ? 'A pull' : `${input.indexes.length} pulls`} from log ${log.fileName} at ${input.dutyPct} %`,
      }),
  });
}
