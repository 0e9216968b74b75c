import type { ChannelReading, Log, Preset, TuningSession } from '@pullbook/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { useIntentKey } from '../../client/intent-key';
import { NoAnswerError } from '../../client/problem-error';
import { send } from '../../client/request';
import { uploadInParts } from '../../client/upload-parts';
import { useKeepLog } from './use-keep-log';

interface TakeIn {
  readonly file: File;
  /** How the file is to be read, where a person said so. */
  readonly reading?: ChannelReading;
}

/**
 * Sends a log file in parts with progress, has it read, and gives back what was found in it. Where the server cannot be
 * reached, the file goes into the outbox of this device (`kept`), even if nobody looks at it any more.
 */
export function useTakeInLog(session: TuningSession, preset: Preset) {
  const client = useQueryClient();
  const intent = useIntentKey();
  const kept = useKeepLog(session, preset);
  const uploaded = useRef<string | null>(null);
  const [sentShare, setSentShare] = useState(0);
  const mutation = useMutation({
    networkMode: 'always',
    mutationFn: async ({ file, reading }: TakeIn) => {
      if (!navigator.onLine) throw new NoAnswerError();
      // In a longer break the file is safer in the outbox, which goes on trying.
      uploaded.current ??= await uploadInParts(file, { onProgress: setSentShare, patience: 'short' });
      const body = { uploadId: uploaded.current, reading: reading ?? null };
      return send<Log>('POST', `/tuning-sessions/${session.id}/logs/from-upload`, {
        body,
        idempotencyKey: intent.keyFor(body),
      });
    },
    onSuccess: () => intent.done(),
    // A file that a person said how to read is on the server already: sent whole again, that would be lost.
    onError: (error, { file, reading }) => {
      if (error instanceof NoAnswerError && reading === undefined) kept.keep(file);
    },
    onSettled: () => client.invalidateQueries({ queryKey: ['logs'] }),
  });
  return { ...mutation, sentShare, uploadId: uploaded.current, kept };
}
