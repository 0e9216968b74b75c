import { deviceOutbox } from './device-outbox';
import { listenToTabs, tellTabs } from './outbox-channel';
import { postEntry } from './post-entry';
import { sendOutbox } from './send-outbox';

/** Pauses before the next try, ms: soon at first, then no more often than a person would. */
const pausesMs = [1_000, 2_000, 5_000, 10_000, 20_000] as const;
/** Entries that were sent are shown from here until the lists have them; a day is more than enough. */
const keepSentMs = 24 * 3600 * 1000;

interface Sender {
  readonly memberId: string;
  /** Asks the server who is signed in; null when it cannot be asked. */
  readonly askWho: () => Promise<string | 'nobody' | null>;
  readonly onSignedOut: () => void;
}

/**
 * Sends this person's entries as long as the page lives. Of several tabs only one sends: the others wait for the lock
 * and take over when it closes. Where there are no locks (a page not from https or localhost) every tab sends, and the
 * keys keep records from being doubled.
 *
 * @returns stops it
 */
export function runSender(sender: Sender): () => void {
  const stop = new AbortController();
  const work = () => keepSending(sender, stop.signal);
  const locks = typeof navigator.locks === 'undefined' ? null : navigator.locks;
  const running = locks === null ? work() : locks.request('pullbook-sender', { signal: stop.signal }, work);
  running.catch((error: unknown) => {
    if (!stop.signal.aborted) console.error('The outbox stopped.', error);
  });
  return () => stop.abort();
}

async function keepSending(sender: Sender, signal: AbortSignal): Promise<void> {
  await forgetOldSent();
  let failures = 0;
  while (!signal.aborted) {
    const woken = wakeUp(signal);
    const ended = await sendIfOwn(sender);
    if (ended === 'signed-out') sender.onSignedOut();
    failures = ended === 'later' ? failures + 1 : 0;
    const pause = failures === 0 ? null : pausesMs[Math.min(failures, pausesMs.length) - 1];
    await woken(pause ?? null);
  }
}

/** Nothing goes out under another name: somebody else may have signed in meanwhile, in another tab. */
async function sendIfOwn({ memberId, askWho }: Sender): Promise<'done' | 'later' | 'signed-out'> {
  const mine = (await deviceOutbox.all()).some(
    (entry) => entry.memberId === memberId && entry.state === 'waiting',
  );
  if (!mine) return 'done';
  const who = await askWho();
  if (who === null) return 'later';
  if (who === 'nobody') return 'signed-out';
  if (who !== memberId) return 'done';
  const onChange = () => tellTabs('outbox');
  return sendOutbox({ store: deviceOutbox, memberId, post: postEntry, now: () => new Date(), onChange });
}

/** Listens from now on; the promise ends when something was written down, the network is back, or the pause is over. */
function wakeUp(signal: AbortSignal): (pauseMs: number | null) => Promise<void> {
  let wake = () => {};
  let isWoken = false;
  const ring = () => {
    isWoken = true;
    wake();
  };
  const stopListening = listenToTabs(ring);
  window.addEventListener('online', ring);
  document.addEventListener('visibilitychange', ring);
  signal.addEventListener('abort', ring);
  return async (pauseMs) => {
    const timer = pauseMs === null ? undefined : setTimeout(ring, pauseMs);
    if (!isWoken) await new Promise<void>((resolve) => (wake = resolve));
    clearTimeout(timer);
    stopListening();
    window.removeEventListener('online', ring);
    document.removeEventListener('visibilitychange', ring);
    signal.removeEventListener('abort', ring);
  };
}

async function forgetOldSent(): Promise<void> {
  const before = Date.now() - keepSentMs;
  const old = (await deviceOutbox.all()).filter(
    (entry) => entry.sentAt !== null && Date.parse(entry.sentAt) < before,
  );
  if (old.length > 0) await deviceOutbox.remove(old.map((entry) => entry.key));
}
