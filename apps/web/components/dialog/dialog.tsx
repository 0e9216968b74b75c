'use client';

import { useId, type ReactNode } from 'react';
import { useModal } from './use-modal';
import styles from './dialog.module.css';

interface DialogProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly wide?: boolean;
  readonly children: ReactNode;
}

/** A sheet over the screen; the browser keeps the focus inside, Escape and the cross close it. */
export function Dialog({ title, onClose, wide = false, children }: DialogProps) {
  const place = useModal();
  const titleId = useId();
  return (
    <dialog
      ref={place}
      className={`${styles.dialog} ${wide ? styles.wide : ''}`}
      aria-labelledby={titleId}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <div className={styles.head}>
        <h2 id={titleId}>{title}</h2>
        <button type="button" aria-label="Close" onClick={onClose}>
          ×
        </button>
      </div>
      <div className={styles.body}>{children}</div>
    </dialog>
  );
}
