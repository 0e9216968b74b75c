import type { Log, Preset, TuningSession } from '@pullbook/contracts';
import { useMutation } from '@tanstack/react-query';
import { enqueue } from '../../offline/enqueue';
import type { OutboxEntry } from '../../offline/outbox-entry';
import { useOutbox, useUploadProgress } from '../../offline/use-outbox';
import { useSignedInMe } from '../people/use-me';

export interface KeptLog {
  /** The file's place in the outbox, once it is on this device. */
  readonly entry: OutboxEntry | undefined;
  /** Share of the bytes sent so far, 0 to 1; null while none is on its way from this tab. */
  readonly sentShare: number | null;
  /** What the server found in it, once it has it. */
  readonly log: Log | undefined;
  /** The device could not keep the file. */
  readonly error: Error | null;
  readonly keep: (file: File) => void;
}

/**
 * Keeps a log file on this device, from where it is sent in its turn. A file that had reached the server before, its
 * answer lost, is known there by its content and not taken twice.
 */
export function useKeepLog(session: TuningSession, preset: Preset): KeptLog {
  const me = useSignedInMe();
  const outbox = useOutbox();
  const keeping = useMutation({
    networkMode: 'always',
    mutationFn: (file: File) =>
      enqueue({
        memberId: me.member.id,
        visitId: session.visitId,
        path: `/tuning-sessions/${session.id}/logs?fileName=${encodeURIComponent(file.name)}`,
        file,
        label: `Log ${file.name} for ${preset.slot} ${preset.name}`,
      }),
  });
  const key = keeping.data?.key ?? '';
  const entry = outbox.find((one) => one.key === key);
  const sentShare = useUploadProgress(key);
  const log = entry?.state === 'sent' ? (entry.answer as Log) : undefined;
  return { entry, sentShare, log, error: keeping.error, keep: keeping.mutate };
}
