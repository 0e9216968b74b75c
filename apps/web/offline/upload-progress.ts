const shares = new Map<string, number>();
const listeners = new Set<() => void>();

/** Tells how much of an entry's file has gone out, 0 to 1. */
export function tellProgress(key: string, share: number): void {
  shares.set(key, share);
  for (const listener of listeners) listener();
}

export function listenToProgress(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Share of an entry's file that this tab has sent so far; null while this tab sends none of it. */
export const progressOf = (key: string): number | null => shares.get(key) ?? null;
