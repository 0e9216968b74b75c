import type { ChannelReading, Log } from '@pullbook/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { useIntentKey } from '../../client/intent-key';
import { send } from '../../client/request';
import { uploadInParts } from '../../client/upload-parts';

interface TakeIn {
  readonly file: File;
  /** How the file is to be read, where a person said so. */
  readonly reading?: ChannelReading;
}

/** Sends a log file in parts with progress, has it read, and gives back what was found in it. */
export function useTakeInLog(sessionId: string) {
  const client = useQueryClient();
  const intent = useIntentKey();
  const uploaded = useRef<string | null>(null);
  const [sentShare, setSentShare] = useState(0);
  const mutation = useMutation({
    mutationFn: async ({ file, reading }: TakeIn) => {
      uploaded.current ??= await uploadInParts(file, { onProgress: setSentShare });
      const body = { uploadId: uploaded.current, reading: reading ?? null };
      return send<Log>('POST', `/tuning-sessions/${sessionId}/logs/from-upload`, {
        body,
        idempotencyKey: intent.keyFor(body),
      });
    },
    onSuccess: () => intent.done(),
    onSettled: () => client.invalidateQueries({ queryKey: ['logs'] }),
  });
  return { ...mutation, sentShare, uploadId: uploaded.current };
}
