'use client';

import { createPortal } from 'react-dom';
import { ButtonLink } from '../button/button';
import { Dialog } from '../dialog/dialog';
import { words, type HelpWord } from './words';

interface HelpDialogProps {
  readonly word: HelpWord;
  readonly onClose: () => void;
}

/** One word's meaning over the screen; at the end of the document, so that it takes no look from where it was asked. */
export function HelpDialog({ word, onClose }: HelpDialogProps) {
  const { name, unit, text } = words[word];
  return createPortal(
    <Dialog title={name} onClose={onClose}>
      <p>{text}</p>
      {unit === null ? null : <p className="soft">Counted in: {unit}.</p>}
      <p>
        <ButtonLink href={`/words#${word}`}>All words</ButtonLink>
      </p>
    </Dialog>,
    document.body,
  );
}
