'use client';

import type { Me, Pull } from '@pullbook/contracts';
import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef } from 'react';
import { ProblemError } from '../../client/problem-error';
import type { OutboxEntry } from '../../offline/outbox-entry';
import { runSender } from '../../offline/run-sender';
import { useOutbox } from '../../offline/use-outbox';
import { fetchMe } from '../../queries/people/use-me';
import { useNotices } from '../notices/notices';

const staleRoots = ['pulls', 'next-pull', 'next-gate-hold', 'presets', 'logs', 'board', 'visits', 'sign-off'];

/** Sends what this person has written down, for as long as they are signed in, and says what came of it. */
export function OutboxRunner({ me }: Readonly<{ me: Me }>) {
  const client = useQueryClient();
  const memberId = me.member.id;
  useEffect(
    () =>
      runSender({
        memberId,
        askWho,
        onSignedOut: () => void client.invalidateQueries({ queryKey: ['me'] }),
      }),
    [client, memberId],
  );
  useNewsOfOutbox(memberId);
  return null;
}

const isWaiting = ({ state }: OutboxEntry): boolean => state === 'waiting';

async function askWho(): Promise<string | 'nobody' | null> {
  try {
    return (await fetchMe(AbortSignal.timeout(15_000))).member.id;
  } catch (error) {
    return error instanceof ProblemError && error.status === 401 ? 'nobody' : null;
  }
}

/** Tells once of each entry that was refused or came out other than it was shown, and lets lists be read anew. */
function useNewsOfOutbox(memberId: string): void {
  const client = useQueryClient();
  const notices = useNotices();
  const outbox = useOutbox();
  const known = useRef<ReadonlyMap<string, OutboxEntry['state']> | null>(null);
  useEffect(() => {
    const before = known.current;
    known.current = new Map(outbox.map((entry) => [entry.key, entry.state]));
    if (before === null) return;
    const changed = outbox.filter(
      (entry) => before.get(entry.key) === 'waiting' && entry.state !== 'waiting',
    );
    for (const entry of changed) {
      const news = newsOf(entry);
      if (news !== null) notices.mind(news);
    }
    if (changed.length === 0) return;
    // Of a long row the lists are read once, at its end: what was sent is in sight from here meanwhile.
    const isUnderWay = outbox.some((entry) => isWaiting(entry) && entry.memberId === memberId);
    if (isUnderWay && changed.every(({ state }) => state === 'sent')) return;
    for (const root of staleRoots) void client.invalidateQueries({ queryKey: [root] });
  }, [client, memberId, notices, outbox]);
}

function newsOf(entry: OutboxEntry): string | null {
  if (entry.state === 'refused') return `Not taken in: ${entry.label}. ${entry.refusal?.text ?? ''}`;
  const made = entry.answer as Partial<Pull> | null;
  const shown = entry.shows.pull;
  if (shown === undefined || !Array.isArray(made?.warnings)) return null;
  const told = new Set(shown.warnings.map((warning) => warning.code));
  const fresh = made.warnings.filter((warning) => !told.has(warning.code));
  return fresh.length === 0 ? null : `Pull ${made.number}: ${fresh.map(({ text }) => text).join(' ')}`;
}
