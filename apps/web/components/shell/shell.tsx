'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import type { ReactNode } from 'react';
import { useSignedInMe } from '../../queries/people/use-me';
import { Menu } from '../menu/menu';
import { LineState } from './line-state';
import { PersonMenu } from './person-menu';
import styles from './shell.module.css';

const places = [
  { href: '/board', name: 'Board' },
  { href: '/customers', name: 'Customers' },
  { href: '/cars', name: 'Cars' },
  { href: '/logs', name: 'Logs' },
  { href: '/controllers', name: 'Controllers' },
  { href: '/workshop', name: 'Workshop' },
] as const;

/** Logs are the tuners' work, the workshop's rules the owner's. */
function isFor(href: string, role: string): boolean {
  if (href === '/logs') return role !== 'desk';
  return href !== '/workshop' || role === 'owner';
}

/** The frame of every screen but the visit: where one is, where else one can go, and who one is. */
export function Shell({ children }: Readonly<{ children: ReactNode }>) {
  const me = useSignedInMe();
  const pathname = usePathname();
  const seen = places.filter(({ href }) => isFor(href, me.member.role));
  const current = (href: string) => (pathname.startsWith(href) ? ('page' as const) : undefined);
  return (
    <>
      <a className={styles.skip} href="#content">
        Skip to content
      </a>
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
        {me.demo ? <span className={styles.demo}>practice workshop</span> : null}
        <LineState />
        <PersonMenu />
      </header>
      <main id="content" className={styles.content} tabIndex={-1}>
        {children}
      </main>
    </>
  );
}
