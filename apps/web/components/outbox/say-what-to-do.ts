import type { ErrorCode } from '@pullbook/contracts';
import type { Refusal } from '../../offline/outbox-entry';

const advice: Partial<Record<ErrorCode, string>> = {
  'visit-closed':
    'The visit was closed meanwhile. Move it back to “on test”, then send again; or drop it if it must not count.',
  'already-signed':
    'The visit was signed off meanwhile, and what is sealed stays as it is. Write it down on paper for the next visit, then drop it.',
  conflict: 'Look at what is on record now. If it is there already, drop this one.',
  'changed-meanwhile':
    'Somebody else changed it meanwhile. Look at what it is now; if your change is still wanted, make it again and drop this one.',
  'readiness-not-passed':
    'Limits or ceilings were changed meanwhile, so the readiness check is open again. Pass it, then send again.',
  'goal-changed':
    'The goal was changed after it was driven. Decide whether it counts for the goal of now. If it does not, write it down on paper, then drop it.',
  'void-already': 'Nothing is left to do: the pull does not count. Drop this one.',
  'ceiling-missing': 'Agree the ceiling of the preset, then send again.',
  'duty-out-of-range':
    'The controller was described anew meanwhile. Check its range and step, then send again or drop it.',
  'hold-out-of-range':
    'The controller was described anew meanwhile. Check its gate hold, then send again or drop it.',
  'not-found': 'What it belongs to is no longer in the book. Write it down on paper, then drop it.',
  'not-allowed': 'Your role may not record this any more. Ask the owner, then send again.',
  'log-unreadable': 'The file is no log that can be read. Drop it, and type the peak instead.',
  'too-large': 'The file is too large. Drop it, and save the log in smaller pieces.',
};

/** What a person can do about something that the server did not take. */
export function sayWhatToDo({ code }: Refusal): string {
  return advice[code] ?? 'Put right what it says, then send again; or drop it.';
}
