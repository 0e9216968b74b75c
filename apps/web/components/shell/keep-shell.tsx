'use client';

import { useEffect } from 'react';
import { useNotices } from '../notices/notices';

/** A page this young can be opened anew without anybody noticing. */
const youngMs = 5_000;

/**
 * Keeps the dashboard on this device, so that it opens without network, and lets a newer build take over: at once on a
 * page that has just been opened, otherwise when its reader reloads.
 */
export function KeepShell() {
  const notices = useNotices();
  useEffect(() => {
    // Browsers keep nothing for pages that come over plain http from another machine.
    if (process.env.NODE_ENV !== 'production' || !('serviceWorker' in navigator)) return;
    const { serviceWorker } = navigator;
    const wasKept = serviceWorker.controller !== null;
    const changed = () => {
      if (!wasKept) return;
      if (performance.now() < youngMs) window.location.reload();
      else notices.done('Pullbook was brought up to date. Reload the page when it suits you.');
    };
    serviceWorker.addEventListener('controllerchange', changed);
    void serviceWorker
      .register('/service-worker.js', { updateViaCache: 'none' })
      .then((registration) => {
        if (performance.now() < youngMs) registration.waiting?.postMessage('take over');
      })
      .catch(() => undefined);
    return () => serviceWorker.removeEventListener('controllerchange', changed);
  }, [notices]);
  return null;
}
