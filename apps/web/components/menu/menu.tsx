'use client';

import { useEffect, useLayoutEffect, useRef, useState, type KeyboardEvent, type ReactNode } from 'react';
import styles from './menu.module.css';

interface MenuProps {
  /** What the button says; `name` is its full name where the picture or word alone is not enough. */
  readonly label: ReactNode;
  readonly name: string;
  readonly compact?: boolean;
  /** The list; it gets `close` so that a choice can close it. */
  readonly children: (close: () => void) => ReactNode;
}

const steps: Readonly<Record<string, number>> = { ArrowDown: 1, ArrowUp: -1 };

/** A button that opens a short list; arrows walk it, Escape closes it and gives the focus back. */
export function Menu({ label, name, compact = false, children }: MenuProps) {
  const [isOpen, setOpen] = useState(false);
  const place = useRef<HTMLDivElement>(null);
  const opener = useRef<HTMLButtonElement>(null);
  const list = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (!isOpen) return undefined;
    const put = () => {
      if (list.current === null || opener.current === null) return;
      if (isInSight(opener.current)) putBeside(list.current, opener.current);
      else setOpen(false);
    };
    const follow = (event: Event) => {
      if (event.target !== list.current) put();
    };
    put();
    // A tablet is turned, a window is drawn wider, the page is scrolled: the list goes along with its button.
    window.addEventListener('resize', put);
    document.addEventListener('scroll', follow, { capture: true, passive: true });
    return () => {
      window.removeEventListener('resize', put);
      document.removeEventListener('scroll', follow, { capture: true });
    };
  }, [isOpen]);
  const close = () => {
    setOpen(false);
    opener.current?.focus();
  };
  useEffect(() => {
    if (!isOpen) return undefined;
    place.current?.querySelector<HTMLElement>('[data-list] :is(button:enabled, a, select)')?.focus();
    const leave = (event: Event) => {
      if (event.target instanceof Node && place.current?.contains(event.target) !== true) setOpen(false);
    };
    document.addEventListener('pointerdown', leave);
    document.addEventListener('focusin', leave);
    return () => {
      document.removeEventListener('pointerdown', leave);
      document.removeEventListener('focusin', leave);
    };
  }, [isOpen]);
  const walk = (event: KeyboardEvent) => {
    if (event.key === 'Escape') close();
    const step = steps[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const stops = [
      ...(place.current?.querySelectorAll<HTMLElement>('[data-list] :is(button:enabled, a)') ?? []),
    ];
    const at = stops.findIndex((one) => one === document.activeElement);
    stops[(at + step + stops.length) % stops.length]?.focus();
  };
  return (
    <div className={styles.menu} ref={place} onKeyDown={isOpen ? walk : undefined}>
      <button
        type="button"
        ref={opener}
        className={`${styles.opener} ${compact ? styles.compact : ''}`}
        aria-expanded={isOpen}
        aria-label={name}
        onClick={() => setOpen((open) => !open)}
      >
        {label}
      </button>
      {isOpen ? (
        <div className={styles.list} data-list="" ref={list}>
          {children(close)}
        </div>
      ) : null}
    </div>
  );
}

const edgePx = 8;

function isInSight(opener: HTMLElement): boolean {
  const { top, bottom } = opener.getBoundingClientRect();
  return bottom > 0 && top < window.innerHeight;
}

/** Below the button and flush with its right edge, or wherever else it fits: fixed, so that no lane cuts it off. */
function putBeside(list: HTMLElement, opener: HTMLElement): void {
  // Measured at the corner, where no edge squeezes it.
  list.style.top = '0';
  list.style.left = '0';
  const at = opener.getBoundingClientRect();
  const size = list.getBoundingClientRect();
  const below = at.bottom + edgePx;
  const fitsBelow = below + size.height <= window.innerHeight - edgePx;
  const top = fitsBelow
    ? below
    : Math.max(edgePx, Math.min(at.top, window.innerHeight) - size.height - edgePx);
  const left = Math.min(Math.max(edgePx, at.right - size.width), window.innerWidth - size.width - edgePx);
  list.style.top = `${top}px`;
  list.style.left = `${left}px`;
}
