import type { AdviceBasis, NextPull, Preset } from '@pullbook/contracts';
import { foundSoundAfter } from '@pullbook/next-pull';
import { queryOptions, skipToken, useQuery } from '@tanstack/react-query';
import { adviseHere } from '../../offline/advise-here';
import type { SeenPull } from '../../offline/pulls-seen';
import { useNextPull } from './use-next-pull';

interface CurrentAdvice {
  /** The advice for exactly the pulls in sight; undefined while there is none. */
  readonly next: NextPull | undefined;
  /** Whether it was worked out on this device, because the server does not know of all the pulls. */
  readonly isHere: boolean;
  readonly error: Error | null;
  readonly refetch: () => void;
}

const nextPullHereQueryOptions = (basis: AdviceBasis | undefined, pulls: readonly SeenPull[]) => {
  const standing = pulls.filter((pull) => pull.voidedAt === null);
  return queryOptions({
    queryKey: ['next-pull-here', basis, standing],
    queryFn: basis === undefined ? skipToken : () => adviseHere(basis, standing),
    staleTime: Infinity,
    gcTime: 60_000,
    retry: false,
  });
};

/**
 * What to drive next, for the pulls as they are seen on this device. The server's answer where it rests on the same
 * pulls; otherwise, with pulls not sent yet, the same function is asked here, on what the server said last of goal,
 * limits, rules and readiness. Without that nothing is advised.
 */
export function useCurrentAdvice(
  sessionId: string,
  preset: Preset,
  pulls: readonly SeenPull[],
): CurrentAdvice {
  const told = useNextPull(sessionId, preset);
  const isToldForThese = told.data !== undefined && restsOn(told.data, pulls);
  const isAskedHere = !isToldForThese && told.data !== undefined;
  const here = useQuery(nextPullHereQueryOptions(isAskedHere ? told.data?.basis : undefined, pulls));
  return {
    next: isToldForThese ? told.data : here.data,
    isHere: isAskedHere,
    error: told.data === undefined ? told.error : here.error,
    refetch: () => void Promise.all([told.refetch(), isAskedHere ? here.refetch() : null]),
  };
}

/** An answer that rests on other pulls than those in sight is not shown: a duty of yesterday must not be driven. */
function restsOn(next: NextPull, pulls: readonly SeenPull[]): boolean {
  if (pulls.some((pull) => pull.unsent === true)) return false;
  const standing = pulls.filter((pull) => pull.voidedAt === null);
  const usable = standing.filter((pull) => pull.usable).map((pull) => pull.number);
  // One from before the car was found sound would still say stop.
  if (next.foundSoundAfterPull !== foundSoundAfter(standing)) return false;
  return next.restsOnPulls.join() === usable.join();
}
