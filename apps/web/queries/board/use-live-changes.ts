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
  'sign-off': ['sign-off', 'visits', 'presets', 'board', 'outlook'],
  'report-link': ['report-links', 'board'],
  member: ['team', 'me'],
  workshop: ['workshop', 'me', 'next-pull', 'outlook'],
};

/** Keeps the screen in step with other devices, over server-sent events; tells whether the line stands. */
export function useLiveChanges(): boolean {
  const client = useQueryClient();
  const [isLive, setLive] = useState(true);
  useEffect(() => {
    const source = new EventSource('/api/v1/events');
    let hadBreak = false;
    source.onopen = () => {
      setLive(true);
      if (hadBreak) void client.invalidateQueries();
      hadBreak = false;
    };
    source.onerror = () => {
      hadBreak = true;
      setLive(false);
    };
    const listen = (event: MessageEvent<string>) => {
      for (const root of rootsOf(event.data))
        void client.invalidateQueries({ queryKey: root === '' ? [] : [root] });
    };
    source.onmessage = listen;
    source.addEventListener('change', listen);
    return () => source.close();
  }, [client]);
  return isLive;
}

/** The query roots that an event makes stale; all of them for a noun that this page does not know yet. */
export function rootsOf(data: string): readonly string[] {
  const event = parseJson(data) as Partial<ChangeEvent> | null;
  if (typeof event?.noun !== 'string') return [];
  return staleRoots[event.noun.replace(/s$/, '')] ?? [''];
}
