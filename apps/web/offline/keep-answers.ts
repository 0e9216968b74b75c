import type { Query, QueryClient } from '@tanstack/react-query';
import { deviceDatabase, type KeptAnswer } from './device-database';

/** Answers that are too large to keep, that are worked out here anyway, or that are only of use with the server. */
const notKept = new Set([
  'next-pull-here',
  'practice',
  'lookalikes',
  'setup',
  'tokens',
  'report-links',
  'traces',
]);
const keepMs = 14 * 24 * 3600 * 1000;
const settleMs = 200;
const build = process.env['PULLBOOK_BUILD'] ?? '';

function isKept({ queryKey, state }: Query): boolean {
  const [root, kind] = queryKey;
  const isLarge = root === 'logs' && kind === 'one';
  return state.data !== undefined && !isLarge && !notKept.has(String(root)) && !notKept.has(String(kind));
}

/** Puts what this device read last into the cache, each answer with the time at which it was read. */
export async function restoreAnswers(client: QueryClient): Promise<void> {
  const database = await deviceDatabase();
  const oldest = Date.now() - keepMs;
  for (const kept of await database.getAll('answers')) {
    if (kept.build !== build || kept.updatedAt < oldest) await database.delete('answers', kept.hash);
    else if (client.getQueryState(kept.queryKey)?.data === undefined) {
      client.setQueryData(kept.queryKey, kept.data, { updatedAt: kept.updatedAt });
      // Shown at once, and asked for anew whatever its age: what changed it may not have been written down here.
      await client.invalidateQueries({ queryKey: kept.queryKey, exact: true, refetchType: 'none' });
    }
  }
}

/** Keeps every answer on this device as it comes in; returns what stops it. */
export function keepAnswers(client: QueryClient): () => void {
  const fresh = new Map<string, Query>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const write = async () => {
    timer = undefined;
    const kept = [...fresh.values()].filter(isKept).map(keptOf);
    fresh.clear();
    const transaction = (await deviceDatabase()).transaction('answers', 'readwrite');
    await Promise.all([...kept.map((one) => transaction.store.put(one)), transaction.done]);
  };
  return client.getQueryCache().subscribe(({ type, query, ...event }) => {
    if (type !== 'updated' || !('action' in event) || event.action.type !== 'success') return;
    fresh.set(query.queryHash, query);
    timer ??= setTimeout(() => void write().catch(() => undefined), settleMs);
  });
}

function keptOf({ queryHash, queryKey, state }: Query): KeptAnswer {
  return {
    hash: queryHash,
    queryKey: [...queryKey],
    data: state.data,
    updatedAt: state.dataUpdatedAt,
    build,
  };
}

/** Another person, or nobody, uses this device now: what was read for the one before is gone. The outbox stays. */
export async function forgetAnswers(): Promise<void> {
  await (await deviceDatabase()).clear('answers');
}
