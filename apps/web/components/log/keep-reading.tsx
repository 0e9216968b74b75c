'use client';

import type { ChannelReading, LogShape } from '@pullbook/contracts';
import { useState, type FormEvent } from 'react';
import {
  useChangeRecipe,
  useChannelRecipes,
  useCreateRecipe,
} from '../../queries/channel-recipes/use-channel-recipes';
import { Button } from '../button/button';
import { CheckField } from '../field/check-field';
import { TextField } from '../field/text-field';
import { ProblemNote } from '../marks/problem-note';
import { draftFault, readingOf, type ReadingDraft } from './reading-draft';
import { ReadingEditor } from './reading-editor';
import styles from './reading.module.css';

interface KeepReadingProps {
  readonly draft: ReadingDraft;
  readonly onChange: (draft: ReadingDraft) => void;
  /** Headers and units of the file; null where there is no table to keep a recipe for. */
  readonly shape: LogShape | null;
  readonly recipeId: string | null;
  readonly fileName: string;
  readonly busy: boolean;
  /** The recipe is kept, where it was to be: read the file now. */
  readonly onRead: (reading: ChannelReading) => void;
}

/** Says how a log is to be read, and keeps it for the next log of this shape. */
export function KeepReading(props: KeepReadingProps) {
  const { draft, onChange, shape, recipeId, fileName, busy, onRead } = props;
  const recipes = useChannelRecipes();
  const create = useCreateRecipe();
  const change = useChangeRecipe();
  const known = recipes.data?.find(({ id }) => id === recipeId);
  const [isKept, setKept] = useState(true);
  const [name, setName] = useState(() => nameFrom(fileName));
  const fault = draftFault(draft);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const reading = readingOf(draft);
    const then = { onSuccess: () => onRead(reading) };
    if (!isKept || shape === null) return onRead(reading);
    if (known === undefined)
      return create.mutate({ name: name.trim() || nameFrom(fileName), shape, reading }, then);
    return change.mutate({ id: known.id, revision: known.revision, change: { reading } }, then);
  };
  return (
    <form onSubmit={submit} noValidate className="stack">
      <ReadingEditor draft={draft} onChange={onChange} />
      {shape === null ? null : (
        <>
          <CheckField
            label={
              known === undefined
                ? 'Keep for the next log of this shape'
                : `Change the recipe “${known.name}” for the next log of this shape`
            }
            checked={isKept}
            onChange={setKept}
          />
          {isKept && known === undefined ? (
            <TextField
              label="Name of this recipe"
              hint="Such as: the logger in the van"
              value={name}
              onChange={setName}
            />
          ) : null}
        </>
      )}
      {fault === null ? null : (
        <p className={styles.fault} role="status">
          ▲ {fault}
        </p>
      )}
      <ProblemNote error={create.error ?? change.error} />
      <p>
        <Button
          type="submit"
          kind="act"
          big
          busy={busy || create.isPending || change.isPending}
          disabled={fault !== null}
        >
          Read the log so
        </Button>
      </p>
    </form>
  );
}

/** The name of a file without ending, numbers and dates: what its logger calls its files. */
function nameFrom(fileName: string): string {
  const bare = fileName
    .replace(/\.[^.]*$/, '')
    .replace(/[\d_.-]+/g, ' ')
    .trim();
  return bare === '' ? 'Logger' : `Logger of “${bare.slice(0, 80)}”`;
}
