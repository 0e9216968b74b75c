'use client';

import dynamic from 'next/dynamic';
import { useState, type ReactNode } from 'react';
import type { HelpWord } from './words';
import styles from './help.module.css';

const HelpDialog = dynamic(() => import('./help-dialog').then((part) => part.HelpDialog));

interface HelpProps {
  readonly word: HelpWord;
  /** What the screen calls it. */
  readonly children?: ReactNode;
}

/** A word that explains itself when it is pressed; the explanation is loaded only then. */
export function Help({ word, children = word.replaceAll('_', ' ') }: HelpProps) {
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <button type="button" className={styles.ask} aria-haspopup="dialog" onClick={() => setOpen(true)}>
        {children}
        <span className={styles.mark}>?</span>
      </button>
      {isOpen ? <HelpDialog word={word} onClose={() => setOpen(false)} /> : null}
    </>
  );
}
