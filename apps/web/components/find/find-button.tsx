'use client';

import { useOpenFinder } from './find-place';
import styles from './find-button.module.css';

/** The way to everything, where fingers and eyes find it; `short` where a bar is full: then the lens stands alone. */
export function FindButton({ short = false }: Readonly<{ short?: boolean }>) {
  const open = useOpenFinder();
  return (
    <button
      type="button"
      className={`${styles.opener} ${short ? styles.short : ''}`}
      aria-label="Find"
      onClick={open}
      aria-haspopup="dialog"
      aria-keyshortcuts="Control+K"
    >
      <svg viewBox="0 0 16 16" aria-hidden="true">
        <circle cx="6.5" cy="6.5" r="4.6" />
        <path d="M10 10l4.6 4.6" />
      </svg>
      <span>Find</span>
      <kbd aria-hidden="true">/</kbd>
    </button>
  );
}
