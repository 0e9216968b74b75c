'use client';

import { usePathname, useRouter } from 'next/navigation';
import { useEffect, type ReactNode } from 'react';
import { ProblemError } from '../../client/problem-error';
import { useMe } from '../../queries/people/use-me';
import { FindPlace } from '../find/find-place';
import { Skeleton } from '../marks/marks';
import { ProblemNote } from '../marks/problem-note';
import { OutboxRunner } from '../outbox/outbox-runner';
import { TourPlace } from '../tour/tour-place';
import { Live } from './live';
import { SkipLink } from './skip-link';
import styles from './shell.module.css';

/** Lets signed-in people in; sends everybody else to the sign-in page and back here afterwards. */
export function Gate({ children }: Readonly<{ children: ReactNode }>) {
  const me = useMe();
  const router = useRouter();
  const pathname = usePathname();
  const isStranger = me.error instanceof ProblemError && me.error.status === 401;
  useEffect(() => {
    if (isStranger) router.replace(`/sign-in?next=${encodeURIComponent(pathname)}`);
  }, [isStranger, pathname, router]);
  if (me.data !== undefined && !isStranger) {
    return (
      <Live>
        <SkipLink />
        <OutboxRunner me={me.data} />
        <TourPlace me={me.data} isAsking={me.isFetching} />
        <FindPlace>{children}</FindPlace>
      </Live>
    );
  }
  return (
    <main id="content" className={styles.content}>
      {me.error !== null && !isStranger ? (
        <ProblemNote error={me.error} onRetry={() => void me.refetch()} />
      ) : (
        <Skeleton lines={6} label="Opening the book" />
      )}
    </main>
  );
}
