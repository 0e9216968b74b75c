'use client';

import { useLayoutEffect, useRef, type RefObject } from 'react';

/**
 * Opens a dialog over the screen as soon as it stands. It is closed while it still stands, too, so that the browser
 * gives the focus back to where it was.
 */
export function useModal(): RefObject<HTMLDialogElement | null> {
  const place = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    const dialog = place.current;
    if (dialog === null || dialog.open) return undefined;
    dialog.showModal();
    return () => dialog.close();
  }, []);
  return place;
}
