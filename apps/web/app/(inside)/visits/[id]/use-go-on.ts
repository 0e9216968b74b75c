import { useCallback, useEffect, useRef } from 'react';

/**
 * After a look at the car the stop gives way to the next pull, and whatever had the keyboard's focus goes with it. Takes
 * the focus to the heading of what comes next, so that whoever has no mouse goes on from there; and again where that is
 * drawn anew, as when the server's answer takes the place of the device's own. Once somebody has put the focus elsewhere,
 * it is left there.
 *
 * @param headingId of the heading, which must be able to take the focus
 * @returns to be called as soon as the car is said to be sound
 */
export function useGoOn(headingId: string): () => void {
  const isAwaited = useRef(false);
  const focused = useRef<HTMLElement | null>(null);
  // At every drawing: what comes next may stand only after a while.
  useEffect(() => {
    if (!isAwaited.current) return;
    const here = document.activeElement;
    if (focused.current?.isConnected === true) {
      isAwaited.current = here === focused.current;
    } else if (here === document.body) {
      focused.current = document.getElementById(headingId);
      focused.current?.focus();
    }
  });
  return useCallback(() => {
    isAwaited.current = true;
    focused.current = null;
  }, []);
}
