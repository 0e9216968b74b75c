'use client';

import dynamic from 'next/dynamic';
import { createContext, useContext, useEffect, useState, type ReactNode } from 'react';
import { readRemembered } from '../remembered/use-remembered';

const Finder = dynamic(() => import('./finder').then((part) => part.Finder));

const FindContext = createContext<() => void>(() => undefined);

/** Opens the finder over whatever screen one is on. */
export const useOpenFinder = (): (() => void) => useContext(FindContext);

/** Lets every screen inside be left for any record: by button, by Ctrl K or ⌘ K, and by the slash key. */
export function FindPlace({ children }: Readonly<{ children: ReactNode }>) {
  const [isOpen, setOpen] = useState(false);
  useEffect(() => {
    const listen = (event: KeyboardEvent) => {
      // Over an open sheet it stays shut: what is half filled in there would be lost.
      if (!asksForFinder(event) || document.querySelector('dialog[open]') !== null) return;
      event.preventDefault();
      setOpen(true);
    };
    document.addEventListener('keydown', listen);
    return () => document.removeEventListener('keydown', listen);
  }, []);
  return (
    <FindContext value={() => setOpen(true)}>
      {children}
      {isOpen ? <Finder onClose={() => setOpen(false)} /> : null}
    </FindContext>
  );
}

function asksForFinder(event: KeyboardEvent): boolean {
  if (event.isComposing || event.altKey) return false;
  if (event.ctrlKey || event.metaKey) return !event.shiftKey && event.key.toLowerCase() === 'k';
  const isTyping = event.target instanceof Element && event.target.matches('input, textarea, select');
  return event.key === '/' && !isTyping && readRemembered('slash-finds') !== 'off';
}
