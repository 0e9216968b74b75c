import { useMutation } from '@tanstack/react-query';
import { useUnits } from '../../components/units/use-units';
import { enqueue } from '../../offline/enqueue';
import { idMadeBy } from '../../offline/outbox-order';
import type { SeenPull } from '../../offline/pulls-seen';
import { useSignedInMe } from '../people/use-me';

interface Void {
  readonly pull: SeenPull;
  readonly reason: string;
}

/** Takes a pull out of the reckoning with a reason, on this device at once; it stays readable. */
export function useVoidPull(visitId: string) {
  const me = useSignedInMe();
  const units = useUnits();
  return useMutation({
    networkMode: 'always',
    mutationFn: ({ pull, reason }: Void) =>
      enqueue({
        memberId: me.member.id,
        visitId,
        path: `/pulls/${pull.unsent === true ? idMadeBy(pull.id) : pull.id}/void`,
        body: { reason },
        label: `Void of pull ${pull.number}, ${units.peak(pull.peakKpa)} ${units.pressureWord} at ${pull.dutyPct} %: ${reason}`,
        shows: () => ({ voided: { pullId: pull.id, reason } }),
      }),
  });
}
