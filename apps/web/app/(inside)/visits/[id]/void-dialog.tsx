'use client';

import { useState, type FormEvent } from 'react';
import { Button } from '../../../../components/button/button';
import { Dialog } from '../../../../components/dialog/dialog';
import { TextField } from '../../../../components/field/text-field';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useUnits } from '../../../../components/units/use-units';
import type { SeenPull } from '../../../../offline/pulls-seen';
import { useVoidPull } from '../../../../queries/pulls/use-void-pull';
import styles from './visit.module.css';

const commonReasons = [
  'typed wrong',
  'throttle lifted',
  'wrong gear',
  'wheel slipped',
  'broken off: knock or lean reading',
  'duty was not the one written',
];

interface VoidDialogProps {
  readonly visitId: string;
  readonly pull: SeenPull;
  readonly onClose: () => void;
}

/** Takes a pull out of the reckoning, never out of the book. */
export function VoidDialog({ visitId, pull, onClose }: VoidDialogProps) {
  const units = useUnits();
  const [reason, setReason] = useState('');
  const [isMissing, setMissing] = useState(false);
  const voidPull = useVoidPull(visitId);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (reason.trim() === '') return setMissing(true);
    return voidPull.mutate({ pull, reason: reason.trim() }, { onSuccess: onClose });
  };
  return (
    <Dialog title={`Void pull ${pull.number}`} onClose={onClose}>
      <p>
        {units.peak(pull.peakKpa)} {units.pressureWord} at {pull.dutyPct} % stays readable, but nothing is
        concluded from it any more.
      </p>
      <form onSubmit={submit} noValidate className="stack">
        <div className={styles.reasons} role="group" aria-label="Common reasons">
          {commonReasons.map((one) => (
            <Button key={one} aria-pressed={reason === one} onClick={() => setReason(one)}>
              {one}
            </Button>
          ))}
        </div>
        <TextField
          label="Why is it void?"
          value={reason}
          onChange={setReason}
          error={isMissing && reason.trim() === '' ? 'Say why: a void pull needs a reason.' : undefined}
        />
        <ProblemNote error={voidPull.error} />
        <Button type="submit" kind="act" big busy={voidPull.isPending}>
          Void this pull
        </Button>
      </form>
    </Dialog>
  );
}
