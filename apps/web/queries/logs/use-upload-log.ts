import type { Log } from '@pullbook/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useIntentKey } from '../../client/intent-key';
import { uploadText } from '../../client/upload';

/** Sends a log file with progress and gives back what was found in it. */
export function useUploadLog(sessionId: string) {
  const client = useQueryClient();
  const intent = useIntentKey();
  const [sentShare, setSentShare] = useState(0);
  const mutation = useMutation({
    mutationFn: (file: File) => {
      setSentShare(0);
      const identity = { name: file.name, byteCount: file.size, lastModified: file.lastModified };
      return uploadText<Log>(
        `/tuning-sessions/${sessionId}/logs?fileName=${encodeURIComponent(file.name)}`,
        file,
        {
          idempotencyKey: intent.keyFor(identity),
          onProgress: setSentShare,
        },
      );
    },
    onSuccess: () => intent.done(),
    onSettled: () => client.invalidateQueries({ queryKey: ['logs'] }),
  });
  return { ...mutation, sentShare };
}
