'use client';

import { useState, type FormEvent } from 'react';
import { Button } from '../../../../components/button/button';
import { Dialog } from '../../../../components/dialog/dialog';
import { TextField } from '../../../../components/field/text-field';
import { Mind } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import type { SeenPull } from '../../../../offline/pulls-seen';
import { useFindCarSound } from '../../../../queries/pulls/use-find-car-sound';
import type { FaultCode } from '@pullbook/tuning-math';
import styles from './visit.module.css';
import { whatToLookAt } from './what-to-look-at';

interface SoundDialogProps {
  readonly visitId: string;
  /** The last pull before the car was looked over. */
  readonly pull: SeenPull;
  readonly fault: FaultCode;
  readonly onSound: () => void;
  readonly onClose: () => void;
}

/** Says that the car was looked over and is sound: what to look at, and what may happen if it is not. */
export function SoundDialog({ visitId, pull, fault, onSound, onClose }: SoundDialogProps) {
  const [note, setNote] = useState('');
  const findSound = useFindCarSound(visitId);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    // Not when it is kept: the advice goes on at once, and this sheet with it.
    onSound();
    findSound.mutate({ pull, note: note.trim() }, { onSuccess: onClose });
  };
  return (
    <Dialog title={`Looked over after pull ${pull.number}`} onClose={onClose}>
      <Mind title="In doubt, do not pull">
        <p>A car with a fault can over-boost at once, at any duty, and wreck its engine.</p>
      </Mind>
      <div className="stack">
        <p>Look at each of these, engine off and cooled down where hands go:</p>
        <ul className={styles.looks}>
          {whatToLookAt(fault).map((look) => (
            <li key={look}>{look}</li>
          ))}
        </ul>
      </div>
      <p className="small soft">
        The pulls so far then count as they were read. Step limit and chance of passing the ceiling stay as
        they are, and the next pull may stop the advice again.
      </p>
      <form onSubmit={submit} noValidate className="stack">
        <TextField
          label="What did you look at?"
          hint="Stands with the pull in the book and in the sign-off. May be left empty."
          lines={2}
          value={note}
          onChange={setNote}
        />
        <ProblemNote error={findSound.error} />
        <Button type="submit" kind="act" big busy={findSound.isPending}>
          Looked over: the car is sound
        </Button>
      </form>
    </Dialog>
  );
}
