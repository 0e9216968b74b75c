'use client';

import type { ChangeEvent } from '@pullbook/contracts';
import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { parseJson } from '../../client/parse-json';

/** Which answers may have changed when a record of this noun did. */
const staleRoots: Readonly<Record<string, readonly string[]>> = {
  customer: ['customers', 'cars', 'visits', 'board'],
  car: ['cars', 'visits', 'board', 'next-pull'],
  controller: ['controllers', 'cars', 'next-pull'],
  preset: ['presets', 'board', 'next-pull', 'sign-off', 'outlook'],
  visit: ['visits', 'board', 'sign-off'],
  'tuning-session': ['tuning-sessions', 'board', 'next-pull', 'outlook'],
  pull: ['pulls', 'presets', 'board', 'next-pull', 'sign-off', 'outlook'],
  log: ['logs'],
  'channel-recipe': ['channel-recipes'],
  'log-setting': ['log-settings'],
  checklist: ['checklist', 'sign-off', 'board'],
  'sign-off': ['sign-off', 'visits', 'presets', 'board', 'outlook'],
  'report-link': ['report-links', 'board'],
  member: ['team', 'me'],
  workshop: ['workshop', 'me', 'next-pull', 'outlook'],
};

export interface Line {
  readonly isLive: boolean;
  /** When the line broke, ms since 1970; null on a page that never had one. */
  readonly brokeAt: number | null;
}

/** A browser gives up on a line that was refused; then it is asked for again after this pause. */
const reopenMs = 4_000;

/** Keeps the screen in step with other devices, over server-sent events; tells whether the line stands. */
export function useLiveChanges(): Line {
  const client = useQueryClient();
  const [line, setLine] = useState<Line>({ isLive: true, brokeAt: null });
  useEffect(() => {
    let hadBreak = false;
    const opened = () => {
      setLine({ isLive: true, brokeAt: null });
      if (hadBreak) void client.invalidateQueries();
      hadBreak = false;
    };
    let hadLine = false;
    const broken = () => {
      hadBreak = true;
      setLine((old) => (old.isLive ? { isLive: false, brokeAt: hadLine ? Date.now() : null } : old));
    };
    const stale = gather((root) => void client.invalidateQueries({ queryKey: root === '' ? [] : [root] }));
    const changed = (data: string) => stale.add(rootsOf(data));
    const close = keepLine({
      opened: () => {
        hadLine = true;
        opened();
      },
      broken,
      changed,
    });
    return () => {
      stale.stop();
      close();
    };
  }, [client]);
  return line;
}

/** Changes that come this soon after others are told together with them: a device may send a hundred pulls in a row. */
const gatherMs = 400;

/** Tells each root at once when it was quiet before, and at the end of the pause when it was not; never one twice. */
function gather(tell: (root: string) => void) {
  const waiting = new Set<string>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const flush = () => {
    timer = waiting.size === 0 ? undefined : setTimeout(flush, gatherMs);
    for (const root of waiting) tell(root);
    waiting.clear();
  };
  return {
    add: (roots: readonly string[]) => {
      for (const root of roots) waiting.add(root);
      if (timer === undefined) flush();
    },
    stop: () => clearTimeout(timer),
  };
}

interface Listener {
  readonly opened: () => void;
  readonly broken: () => void;
  readonly changed: (data: string) => void;
}

function keepLine({ opened, broken, changed }: Listener): () => void {
  let source: EventSource | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const open = () => {
    clearTimeout(timer);
    source?.close();
    source = new EventSource('/api/v1/events');
    source.onopen = opened;
    source.onerror = () => {
      broken();
      if (source?.readyState === EventSource.CLOSED) timer = setTimeout(open, reopenMs);
    };
    const listen = (event: MessageEvent<string>) => changed(event.data);
    source.onmessage = listen;
    source.addEventListener('change', listen);
  };
  open();
  window.addEventListener('offline', broken);
  window.addEventListener('online', open);
  return () => {
    clearTimeout(timer);
    source?.close();
    window.removeEventListener('offline', broken);
    window.removeEventListener('online', open);
  };
}

/** The query roots that an event makes stale; all of them for a noun that this page does not know yet. */
export function rootsOf(data: string): readonly string[] {
  const event = parseJson(data) as Partial<ChangeEvent> | null;
  if (typeof event?.noun !== 'string') return [];
  return staleRoots[event.noun.replace(/s$/, '')] ?? [''];
}
