'use client';

import { FirstOwner } from '@pullbook/contracts';
import type { FormEvent } from 'react';
import { Button } from '../../components/button/button';
import { TextField } from '../../components/field/text-field';
import { readValues } from '../../components/form/read-values';
import { useDraft } from '../../components/form/use-draft';
import { ProblemNote } from '../../components/marks/problem-note';
import { useMakeFirstOwner } from '../../queries/people/use-sign-in';
import styles from './sign-in.module.css';

/** The first owner of a fresh installation: proves by the one-time code that they run the server. */
export function FirstOwnerForm({ onDone }: Readonly<{ onDone: () => void }>) {
  const draft = useDraft({ code: '', workshopName: '', name: '', email: '', password: '' });
  const make = useMakeFirstOwner();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readValues(draft.values, { pressure: 'kPa', temperature: 'C' }, FirstOwner, ({ text }) => ({
      code: text('code'),
      workshopName: text('workshopName'),
      name: text('name'),
      email: text('email'),
      password: draft.values.password,
    }));
    if ('faults' in read) draft.fail(read.faults);
    else make.mutate(read.data, { onSuccess: onDone, onError: draft.failFrom });
  };
  return (
    <form className={`sheet stack ${styles.form}`} onSubmit={submit} noValidate>
      <h1>Open a new book</h1>
      <p className="soft">
        Nobody works here yet. The server has printed a one-time code where it was started; it shows that you
        run it.
      </p>
      <ProblemNote error={make.error} />
      <TextField label="One-time code" {...draft.bind('code')} />
      <TextField label="Name of the workshop" autoComplete="organization" {...draft.bind('workshopName')} />
      <TextField label="Your name" autoComplete="name" {...draft.bind('name')} />
      <TextField label="Email" type="email" autoComplete="username" {...draft.bind('email')} />
      <TextField
        label="Password"
        type="password"
        autoComplete="new-password"
        hint="At least 10 characters."
        {...draft.bind('password')}
      />
      <Button type="submit" kind="act" big busy={make.isPending}>
        Open the book
      </Button>
    </form>
  );
}
