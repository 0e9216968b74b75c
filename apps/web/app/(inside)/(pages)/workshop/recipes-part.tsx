'use client';

import type { ChannelRecipe } from '@pullbook/contracts';
import dynamic from 'next/dynamic';
import { useState } from 'react';
import { Button } from '../../../../components/button/button';
import { Dialog } from '../../../../components/dialog/dialog';
import { Skeleton } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useNotices } from '../../../../components/notices/notices';
import { sayDate } from '../../../../components/time/say-when';
import { useChannelRecipes, useDeleteRecipe } from '../../../../queries/channel-recipes/use-channel-recipes';
import styles from './workshop.module.css';

const RecipeForm = dynamic(() => import('./recipe-form').then((part) => part.RecipeForm), {
  loading: () => <Skeleton lines={6} label="Opening the recipe" />,
});

/** How are the files of each logger read? */
export function RecipesPart({ mayChange }: Readonly<{ mayChange: boolean }>) {
  const recipes = useChannelRecipes();
  const remove = useDeleteRecipe();
  const notices = useNotices();
  const [opened, setOpened] = useState<ChannelRecipe | null>(null);
  return (
    <section className="sheet stack" aria-labelledby="recipes">
      <h2 id="recipes">Channel recipes</h2>
      <p className="soft">
        How the logs of each logger are read: which column is what, in which unit. A recipe is kept when
        somebody corrects the columns of a log, and is used for every log with the same columns.
      </p>
      <ProblemNote error={recipes.error ?? remove.error} onRetry={() => void recipes.refetch()} />
      {recipes.isPending ? <Skeleton lines={3} label="Loading the recipes" /> : null}
      {recipes.data?.length === 0 ? (
        <p>None yet. Drop a log on a visit, correct its columns, and keep them.</p>
      ) : null}
      <ul className={styles.lines}>
        {(recipes.data ?? []).map((recipe) => (
          <li key={recipe.id}>
            <span className={styles.person}>
              <b>{recipe.name}</b>{' '}
              <span className="soft">
                {recipe.shape.headers.length} columns, {toldCount(recipe)} told; kept{' '}
                {sayDate(recipe.createdAt)}
              </span>
            </span>
            {mayChange ? (
              <>
                <Button aria-label={`Open the recipe ${recipe.name}`} onClick={() => setOpened(recipe)}>
                  Open
                </Button>
                <Button
                  aria-label={`Forget the recipe ${recipe.name}`}
                  busy={remove.isPending}
                  onClick={() =>
                    remove.mutate(recipe, {
                      onSuccess: () =>
                        notices.done(`${recipe.name} is forgotten. Logs on record stay as they were read.`),
                    })
                  }
                >
                  Forget
                </Button>
              </>
            ) : null}
          </li>
        ))}
      </ul>
      {opened === null ? null : (
        <Dialog title={`Recipe ${opened.name}`} onClose={() => setOpened(null)} wide>
          <RecipeForm recipe={opened} onDone={() => setOpened(null)} />
        </Dialog>
      )}
    </section>
  );
}

const toldCount = ({ reading }: ChannelRecipe) =>
  reading.columns.filter(({ quantity }) => quantity !== 'unknown').length;
