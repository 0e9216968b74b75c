'use client';

import { useUnsent } from '../../offline/use-outbox';
import { Mind } from '../marks/marks';

/** On the sign-in page: what waits on this device is safe, and goes out once its writer has signed in. */
export function UnsentNote() {
  const count = useUnsent().length;
  if (count === 0) return null;
  return (
    <Mind>
      <p>
        {count === 1 ? 'One entry was' : `${count} entries were`} written down on this device and not sent
        yet. Nothing is lost: it goes out as soon as whoever wrote it signs in here.
      </p>
    </Mind>
  );
}
