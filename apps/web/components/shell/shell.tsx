'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import type { ReactNode } from 'react';
import { useSignedInMe } from '../../queries/people/use-me';
import { FindButton } from '../find/find-button';
import { Menu } from '../menu/menu';
import { UnsentState } from '../outbox/unsent-state';
import { LineState } from './line-state';
import { PersonMenu } from './person-menu';
import { placesOf } from './places';
import styles from './shell.module.css';

/** The frame of every screen but the visit: where one is, where else one can go, and who one is. */
export function Shell({ children }: Readonly<{ children: ReactNode }>) {
  const me = useSignedInMe();
  const pathname = usePathname();
  const seen = placesOf(me.member.role);
  const current = (href: string) => (pathname.startsWith(href) ? ('page' as const) : undefined);
  return (
    <>
      <header className={styles.bar}>
        <Link className={styles.mark} href="/board">
          Pullbook
        </Link>
        <nav className={styles.places} aria-label="Places">
          {seen.map((place) => (
            <Link key={place.href} href={place.href} aria-current={current(place.href)}>
              {place.name}
            </Link>
          ))}
        </nav>
        <span className={styles.phonePlaces}>
          <Menu
            name="Go to"
            label={
              <>
                Go to <span aria-hidden="true">▾</span>
              </>
            }
          >
            {(close) =>
              seen.map((place) => (
                <Link key={place.href} href={place.href} aria-current={current(place.href)} onClick={close}>
                  {place.name}
                </Link>
              ))
            }
          </Menu>
        </span>
        <span className="grow" />
        {me.demo ? <span className={styles.demo}>demo workshop</span> : null}
        <UnsentState />
        <LineState />
        <FindButton />
        <PersonMenu />
      </header>
      <main id="content" className={styles.content} tabIndex={-1}>
        {children}
      </main>
    </>
  );
}
