'use client';

import type { Log, Preset } from '@pullbook/contracts';
import { Dialog } from '../../../../components/dialog/dialog';
import { FoundPulls } from '../../../../components/log/found-pulls';

interface LateLogProps {
  readonly log: Log;
  readonly visitId: string;
  readonly preset: Preset;
  readonly dutyPct: number | null;
  readonly onClose: () => void;
}

/** The pulls of a log that was sent after the fact. */
export function LateLog({ log, onClose, ...about }: LateLogProps) {
  return (
    <Dialog title={`Log ${log.fileName}`} onClose={onClose} wide>
      <FoundPulls log={log} {...about} onDone={onClose} />
    </Dialog>
  );
}
