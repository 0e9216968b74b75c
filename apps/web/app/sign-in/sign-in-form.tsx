'use client';

import { SignIn } from '@pullbook/contracts';
import { useRouter, useSearchParams } from 'next/navigation';
import type { FormEvent } from 'react';
import { Button } from '../../components/button/button';
import { TextField } from '../../components/field/text-field';
import { readValues } from '../../components/form/read-values';
import { useDraft } from '../../components/form/use-draft';
import { ProblemNote } from '../../components/marks/problem-note';
import { useSignIn } from '../../queries/people/use-sign-in';
import styles from './sign-in.module.css';

const demoLogins = [
  { name: 'Owner', email: 'owner@pullbook.example', does: 'settings, team, everything else' },
  { name: 'Tuner', email: 'tuner@pullbook.example', does: 'pulls, advice, sign-off' },
  { name: 'Front desk', email: 'desk@pullbook.example', does: 'take in, hand over' },
] as const;
const demoPassword = 'practice-only';

/** Only paths of our own: an address from outside never decides where people land. */
function placeToGo(next: string | null): string {
  return next !== null && /^\/(?![/\\])/.test(next) && !next.startsWith('/sign-in') ? next : '/board';
}

export function SignInForm({ demo }: Readonly<{ demo: boolean }>) {
  const draft = useDraft({ email: '', password: '' });
  const signIn = useSignIn();
  const router = useRouter();
  const next = useSearchParams().get('next');
  const enter = (input: SignIn) =>
    signIn.mutate(input, {
      onSuccess: () => router.replace(placeToGo(next)),
      onError: draft.failFrom,
    });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readValues(draft.values, { pressure: 'kPa', temperature: 'C' }, SignIn, ({ text }) => ({
      email: text('email'),
      password: draft.values.password,
    }));
    if ('faults' in read) draft.fail(read.faults);
    else enter(read.data);
  };
  return (
    <>
      <form className={`sheet stack ${styles.form}`} onSubmit={submit} noValidate>
        <h1>Sign in</h1>
        <ProblemNote error={signIn.error} />
        <TextField label="Email" type="email" autoComplete="username" {...draft.bind('email')} />
        <TextField
          label="Password"
          type="password"
          autoComplete="current-password"
          {...draft.bind('password')}
        />
        <Button type="submit" kind="act" big busy={signIn.isPending}>
          Sign in
        </Button>
      </form>
      {demo ? (
        <section className="stack" aria-labelledby="practice">
          <h2 id="practice">Practice workshop</h2>
          <p className="soft">
            Invented cars and people. Choose who you are; the password of all three is <b>{demoPassword}</b>.
          </p>
          <ul className={styles.logins}>
            {demoLogins.map((one) => (
              <li key={one.email}>
                <button
                  type="button"
                  disabled={signIn.isPending}
                  onClick={() => enter({ email: one.email, password: demoPassword })}
                >
                  <b>{one.name}</b>
                  <span className="soft">{one.does}</span>
                  <span className="small">{one.email}</span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
    </>
  );
}
