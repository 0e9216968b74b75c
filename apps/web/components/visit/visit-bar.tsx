'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import { useSignedInMe } from '../../queries/people/use-me';
import { useTuningSessions } from '../../queries/tuning-sessions/use-tuning-sessions';
import { useVisit } from '../../queries/visits/use-visits';
import { FindButton } from '../find/find-button';
import { Plate, Tag } from '../marks/marks';
import { UnsentState } from '../outbox/unsent-state';
import { PersonMenu } from '../shell/person-menu';
import { visitNumber } from './visit-number';
import styles from './visit-bar.module.css';

const placeWords = { 'dyno-cell': 'dyno cell', 'closed-course': 'closed course' } as const;

/** One line over everything of a visit: which car, where it is driven, where else to go. */
export function VisitBar({ visitId }: Readonly<{ visitId: string }>) {
  const visit = useVisit(visitId).data;
  const sessions = useTuningSessions(visitId).data ?? [];
  const me = useSignedInMe();
  const pathname = usePathname();
  const session = sessions.at(-1);
  const root = `/visits/${visitId}`;
  const rooms = [
    ...(me.member.role === 'desk' ? [] : [{ href: root, name: 'Pulls' }]),
    { href: `${root}/about`, name: 'About' },
    { href: `${root}/sign-off`, name: 'Sign-off' },
  ];
  return (
    <header className={styles.bar}>
      <Link href="/board" className={styles.back} prefetch={false}>
        <span aria-hidden="true">‹ </span>Board
      </Link>
      {visit === undefined ? null : (
        <h1 className={styles.title}>
          <Plate>{visit.plate}</Plate>
          <span className={styles.model}>{visit.model}</span>
          <span className={styles.number}>
            <span className="unseen">, </span>visit {visitNumber(visit.number)}
          </span>
        </h1>
      )}
      <nav className={styles.rooms} aria-label="This visit">
        {rooms.map((room) => (
          <Link
            key={room.href}
            href={room.href}
            prefetch={false}
            aria-current={pathname === room.href ? 'page' : undefined}
          >
            {room.name}
          </Link>
        ))}
      </nav>
      <span className="grow" />
      <span className={styles.sent}>
        <UnsentState always />
      </span>
      {session === undefined ? null : (
        <span className={styles.place}>
          <Tag>
            {placeWords[session.placeKind]} · {session.driver}, {session.passenger}
          </Tag>
        </span>
      )}
      <FindButton short />
      <PersonMenu
        top={() => (
          <a href={`/api/v1/visits/${visitId}/job-sheet.pdf`} target="_blank" rel="noreferrer">
            Job sheet (PDF)
          </a>
        )}
      />
    </header>
  );
}
