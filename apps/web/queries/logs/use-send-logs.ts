import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { uploadInParts } from '../../client/upload-parts';
import { waitingLogsQueryOptions } from './use-waiting-logs';

/** A file on its way in. */
export interface SendingFile {
  readonly number: number;
  readonly file: File;
  readonly share: number;
  /** Null while it is sent or waits for its turn. */
  readonly error: Error | null;
}

/** Sends many files, one after the other; what fails stays to be tried again, and holds up none of the others. */
export function useSendLogs() {
  const client = useQueryClient();
  const [files, setFiles] = useState<readonly SendingFile[]>([]);
  const lastNumber = useRef(0);
  const queue = useRef<Promise<void>>(Promise.resolve());
  const change = (number: number, more: Partial<SendingFile>) =>
    setFiles((all) => all.map((one) => (one.number === number ? { ...one, ...more } : one)));
  const forget = (number: number) => setFiles((all) => all.filter((one) => one.number !== number));
  const sendOne = async (number: number, file: File): Promise<void> => {
    try {
      await uploadInParts(file, { onProgress: (share) => change(number, { share }), patience: 'long' });
      await client.invalidateQueries({ queryKey: waitingLogsQueryOptions().queryKey });
      forget(number);
    } catch (error) {
      change(number, { error: error instanceof Error ? error : new Error('this file was not sent') });
    }
  };
  const enqueue = (number: number, file: File) => {
    queue.current = queue.current.then(() => sendOne(number, file));
  };
  return {
    files,
    send: (chosen: readonly File[]) => {
      for (const file of chosen) {
        lastNumber.current += 1;
        const number = lastNumber.current;
        setFiles((all) => [...all, { number, file, share: 0, error: null }]);
        enqueue(number, file);
      }
    },
    sendAgain: ({ number, file }: SendingFile) => {
      change(number, { error: null, share: 0 });
      enqueue(number, file);
    },
    forget,
  };
}
