'use client';

import { useState, type FormEvent } from 'react';
import { Button } from '../../../../components/button/button';
import { TextField } from '../../../../components/field/text-field';
import { Skeleton } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { sayDate } from '../../../../components/time/say-when';
import { useMakeToken, useRevokeToken, useTokens } from '../../../../queries/people/use-tokens';
import styles from './workshop.module.css';

const intoSight = (place: HTMLElement | null) => place?.scrollIntoView({ block: 'nearest' });

/** Tokens for programs that read or write this book. */
export function TokensPart() {
  const tokens = useTokens();
  const make = useMakeToken();
  const revoke = useRevokeToken();
  const [name, setName] = useState('');
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (name.trim() !== '') make.mutate({ name: name.trim() }, { onSuccess: () => setName('') });
  };
  return (
    <section className="sheet stack" aria-labelledby="tokens">
      <h2 id="tokens">Tokens for programs</h2>
      <p className="soft">
        A program shows its token and may then do what you may do. The API is described at{' '}
        <a href="/api/docs">/api/docs</a>.
      </p>
      <form onSubmit={submit} className={styles.tokenForm}>
        <TextField label="What is it for?" value={name} onChange={setName} />
        <Button type="submit" busy={make.isPending} disabled={name.trim() === ''}>
          Make token
        </Button>
      </form>
      <ProblemNote error={make.error ?? revoke.error ?? tokens.error} />
      {make.data === undefined ? null : (
        <div className={styles.secret} role="status" ref={intoSight}>
          <p>Copy it now: it is shown only this once.</p>
          <code>{make.data.secret}</code>
        </div>
      )}
      {tokens.isPending ? <Skeleton lines={2} label="Loading the tokens" /> : null}
      <ul className={styles.lines}>
        {(tokens.data ?? []).map((token) => (
          <li key={token.id}>
            <span className={styles.person}>
              <b>{token.name}</b>{' '}
              <span className="soft">
                made {sayDate(token.createdAt)},{' '}
                {token.lastUsedAt === null ? 'never used' : `last used ${sayDate(token.lastUsedAt)}`}
                {token.revokedAt === null ? '' : `, revoked ${sayDate(token.revokedAt)}`}
              </span>
            </span>
            {token.revokedAt === null ? (
              <Button
                aria-label={`Revoke token ${token.name}`}
                busy={revoke.isPending}
                onClick={() => revoke.mutate(token.id)}
              >
                Revoke
              </Button>
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  );
}
