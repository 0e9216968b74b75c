import type { Reason } from '@pullbook/contracts';
import type { LogNotice } from '@pullbook/tuning-math';

/** What the analysis says of a log or pull, as the API tells it. */
export const presentNotice = ({ code, text, pieces }: LogNotice): Reason => ({
  code,
  text,
  ...(pieces === undefined ? {} : { pieces: [...pieces] }),
});
