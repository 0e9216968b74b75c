'use client';

import type { ChannelReading } from '@pullbook/contracts';
import { useState } from 'react';
import { useLookAtUpload } from '../../queries/logs/use-look-at-upload';
import { Skeleton } from '../marks/marks';
import { ProblemNote } from '../marks/problem-note';
import { KeepReading } from './keep-reading';
import { draftOfLook, type ReadingDraft } from './reading-draft';
import styles from './reading.module.css';

interface UnreadLogProps {
  readonly uploadId: string;
  readonly busy: boolean;
  readonly onRead: (reading: ChannelReading) => void;
}

/** A file that was sent but not understood: its first lines and columns, for a person to say what they are. */
export function UnreadLog({ uploadId, busy, onRead }: UnreadLogProps) {
  const [draft, setDraft] = useState<ReadingDraft | null>(null);
  const look = useLookAtUpload(uploadId, layoutOf(draft));
  if (look.data === undefined) {
    return look.isPending ? (
      <Skeleton lines={5} label="Looking at the file" />
    ) : (
      <ProblemNote error={look.error} />
    );
  }
  const { lines, shape, columns, problem, fileName, recipeId } = look.data;
  const fresh = draftOfLook(look.data);
  const isSame = draft !== null && sameColumns(draft, fresh);
  const shown = isSame ? draft : { ...fresh, ...(draft === null ? {} : withoutColumns(draft)) };
  return (
    <div className="stack">
      <h3>{columns.length === 0 ? 'Its first lines' : 'Say what its columns hold'}</h3>
      <pre className={styles.lines} tabIndex={0} aria-label="First lines of the file">
        {lines.join('\n')}
      </pre>
      {problem === null ? null : <p className={styles.fault}>▲ {problem}</p>}
      <KeepReading
        draft={shown}
        onChange={setDraft}
        shape={shape}
        recipeId={recipeId}
        fileName={fileName}
        busy={busy || look.isPlaceholderData}
        onRead={onRead}
      />
    </div>
  );
}

/** Delimiter and decimal mark change what the columns are, so the file is looked at anew under them. */
function layoutOf(draft: ReadingDraft | null): Pick<ChannelReading, 'delimiter' | 'decimalMark'> | null {
  if (draft === null || (draft.delimiter === '' && draft.decimalMark === '')) return null;
  return {
    delimiter: (draft.delimiter || null) as ChannelReading['delimiter'],
    decimalMark: (draft.decimalMark || null) as ChannelReading['decimalMark'],
  };
}

function withoutColumns({
  sampleRateHz,
  delimiter,
  decimalMark,
}: ReadingDraft): Omit<ReadingDraft, 'columns'> {
  return { sampleRateHz, delimiter, decimalMark };
}

function sameColumns(a: ReadingDraft, b: ReadingDraft): boolean {
  const names = ({ columns }: ReadingDraft): string => JSON.stringify(columns.map(({ header }) => header));
  return names(a) === names(b);
}
