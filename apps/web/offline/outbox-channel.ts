/** What tabs tell each other: the outbox has changed, or another person signed in or out. */
type Message = 'outbox' | 'person';

const listeners = new Set<(message: Message) => void>();
let channel: BroadcastChannel | null = null;

function openChannel(): BroadcastChannel | null {
  if (typeof BroadcastChannel === 'undefined') return null;
  const opened = new BroadcastChannel('pullbook');
  opened.onmessage = (event: MessageEvent<Message>) => tellHere(event.data);
  return opened;
}

function tellHere(message: Message): void {
  for (const listener of listeners) listener(message);
}

/** Tells this tab and all others of this device. */
export function tellTabs(message: Message): void {
  channel ??= openChannel();
  channel?.postMessage(message);
  tellHere(message);
}

export function listenToTabs(listener: (message: Message) => void): () => void {
  channel ??= openChannel();
  listeners.add(listener);
  return () => listeners.delete(listener);
}
