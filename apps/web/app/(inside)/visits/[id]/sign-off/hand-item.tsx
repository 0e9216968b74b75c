'use client';

import type { SignOff } from '@pullbook/contracts';
import { useState } from 'react';
import { Button } from '../../../../../components/button/button';
import { CheckField } from '../../../../../components/field/check-field';
import { TextField } from '../../../../../components/field/text-field';
import { ItemWords } from './checklist-items';
import styles from './sign-off.module.css';

interface HandItemProps {
  readonly item: SignOff['items'][number];
  readonly isDone: boolean;
  readonly onDone: (isDone: boolean) => void;
  readonly note: string;
  readonly onNote: (note: string) => void;
}

/** An item that a person ticks, with room for what they found; the note is sealed with it. */
export function HandItem({ item, isDone, onDone, note, onNote }: HandItemProps) {
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <div className={styles.handItem}>
        <CheckField label={<ItemWords item={item} />} checked={isDone} onChange={onDone} />
        {isOpen ? null : (
          <Button kind="quiet" aria-label={`Note on: ${item.question}`} onClick={() => setOpen(true)}>
            Note
          </Button>
        )}
      </div>
      {isOpen ? (
        <TextField
          label={`Note on “${item.question}”`}
          hint="Sealed with the item."
          autoFocus
          value={note}
          onChange={onNote}
        />
      ) : null}
    </>
  );
}
