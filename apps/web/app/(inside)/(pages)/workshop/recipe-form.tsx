'use client';

import type { ChannelRecipe } from '@pullbook/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../../components/button/button';
import { TextField } from '../../../../components/field/text-field';
import { draftFault, draftOfReading, readingOf } from '../../../../components/log/reading-draft';
import { ReadingEditor } from '../../../../components/log/reading-editor';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useNotices } from '../../../../components/notices/notices';
import { useChangeRecipe } from '../../../../queries/channel-recipes/use-channel-recipes';

interface RecipeFormProps {
  readonly recipe: ChannelRecipe;
  readonly onDone: () => void;
}

/** A kept recipe: its name, and what each column holds. */
export function RecipeForm({ recipe, onDone }: RecipeFormProps) {
  const change = useChangeRecipe();
  const notices = useNotices();
  const [name, setName] = useState(recipe.name);
  const [draft, setDraft] = useState(() => draftOfReading(recipe.shape.headers, recipe.reading));
  const fault = name.trim() === '' ? 'Give it a name.' : draftFault(draft);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    change.mutate(
      { id: recipe.id, revision: recipe.revision, change: { name: name.trim(), reading: readingOf(draft) } },
      {
        onSuccess: () => {
          notices.done(`${name.trim()} is kept. Logs on record stay as they were read.`);
          onDone();
        },
      },
    );
  };
  return (
    <form onSubmit={submit} noValidate className="stack">
      <TextField label="Name" value={name} onChange={setName} />
      <ReadingEditor draft={draft} onChange={setDraft} />
      {fault === null ? null : <p role="status">▲ {fault}</p>}
      <ProblemNote error={change.error} />
      <p>
        <Button type="submit" kind="act" big busy={change.isPending} disabled={fault !== null}>
          Save recipe
        </Button>
      </p>
    </form>
  );
}
