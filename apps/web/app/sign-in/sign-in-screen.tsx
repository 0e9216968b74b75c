'use client';

import { useRouter } from 'next/navigation';
import { Skeleton } from '../../components/marks/marks';
import { UnsentNote } from '../../components/outbox/unsent-note';
import { ProblemNote } from '../../components/marks/problem-note';
import { useSetup } from '../../queries/people/use-setup';
import { FirstOwnerForm } from './first-owner-form';
import { SignInForm } from './sign-in-form';
import styles from './sign-in.module.css';

/** Who are you? Or, in a fresh installation: who is the first owner? */
export function SignInScreen() {
  const setup = useSetup();
  const router = useRouter();
  const needsOwner = setup.data?.needsFirstOwner === true;
  return (
    <main className={styles.page}>
      <header className={styles.head}>
        <p className={styles.mark}>Pullbook</p>
        <p className="soft">
          The book in which a tuning workshop plans, records and proves every full-load pull.
        </p>
      </header>
      <UnsentNote />
      {setup.isPending ? <Skeleton lines={5} /> : null}
      <ProblemNote error={setup.error} onRetry={() => void setup.refetch()} />
      {needsOwner ? <FirstOwnerForm onDone={() => router.replace('/board')} /> : null}
      {setup.data !== undefined && !needsOwner ? <SignInForm demo={setup.data.demo} /> : null}
    </main>
  );
}
