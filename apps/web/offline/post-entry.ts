import { judgeAnswer } from './judge-answer';
import { tellProgress } from './upload-progress';
import type { Sendable, Try } from './send-outbox';

/** A server that is there has answered by then; a network that only looks like one has not. */
const answerMs = 20_000;
/** A file of 100 MB over a slow line takes its time; standing still for this long, it has stopped. */
const stallMs = 30_000;

/** Sends one entry. `fetch` cannot tell how much of a file has gone out, so this is XMLHttpRequest's one place. */
export function postEntry({ entry, path, bodyText }: Sendable): Promise<Try> {
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    request.open(entry.method, `/api/v1${path}`);
    request.setRequestHeader('accept', 'application/json');
    request.setRequestHeader('idempotency-key', entry.key);
    request.setRequestHeader('content-type', entry.file === null ? 'application/json' : 'text/csv');
    if (entry.ifMatch !== null) request.setRequestHeader('if-match', `"${entry.ifMatch}"`);
    const giveUp = () => request.abort();
    let timer = setTimeout(giveUp, entry.file === null ? answerMs : stallMs);
    request.upload.onprogress = (event) => {
      clearTimeout(timer);
      timer = setTimeout(giveUp, stallMs);
      if (entry.file !== null && event.lengthComputable) tellProgress(entry.key, event.loaded / event.total);
    };
    const end = (outcome: Try) => {
      clearTimeout(timer);
      resolve(outcome);
    };
    request.onerror = () => end({ kind: 'later' });
    request.onabort = () => end({ kind: 'later' });
    request.onload = () => end(judgeAnswer(request.status, request.responseText));
    request.send(entry.file ?? bodyText);
  });
}
