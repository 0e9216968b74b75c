'use client';

import {
  createContext,
  useCallback,
  useContext,
  useEffect,
  useMemo,
  useRef,
  useState,
  type ReactNode,
} from 'react';
import { stepAside } from './step-aside';
import styles from './notices.module.css';

interface Notice {
  readonly id: number;
  readonly text: string;
  readonly kind: 'done' | 'mind';
}

interface Notices {
  /** Tells something that went well; goes by itself. */
  readonly done: (text: string) => void;
  /** Tells something to mind; stays until closed. */
  readonly mind: (text: string) => void;
}

const NoticesContext = createContext<Notices | null>(null);
const doneStaysMs = 6_000;

/** Short messages at the edge of the screen, read out by screen readers, never over what is being pressed. */
export function NoticesProvider({ children }: Readonly<{ children: ReactNode }>) {
  const [notices, setNotices] = useState<readonly Notice[]>([]);
  const lastId = useRef(0);
  const close = useCallback((id: number) => setNotices((all) => all.filter((one) => one.id !== id)), []);
  const add = useCallback(
    (kind: Notice['kind'], text: string) => {
      lastId.current += 1;
      const id = lastId.current;
      setNotices((all) =>
        [...all.filter((one) => staysBeside(one, { kind, text })), { id, kind, text }].slice(-3),
      );
      if (kind === 'done') setTimeout(() => close(id), doneStaysMs);
    },
    [close],
  );
  const value = useMemo<Notices>(
    () => ({ done: (text) => add('done', text), mind: (text) => add('mind', text) }),
    [add],
  );
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (notices.length === 0) return undefined;
    const look = () => place.current !== null && stepAside(place.current);
    look();
    document.addEventListener('focusin', look);
    return () => document.removeEventListener('focusin', look);
  }, [notices]);
  return (
    <NoticesContext value={value}>
      {children}
      {/* So that what stands at the end of the page can be scrolled out from under them. */}
      {notices.length === 0 ? null : <div className={styles.room} />}
      <div className={styles.place} ref={place} role="log" aria-live="polite" aria-label="Notices">
        {notices.map((notice) => (
          <div key={notice.id} className={`${styles.notice} ${styles[notice.kind]}`}>
            <span aria-hidden="true">{notice.kind === 'done' ? '✓' : '!'}</span>
            <p>{notice.text}</p>
            <button type="button" aria-label="Close notice" onClick={() => close(notice.id)}>
              ×
            </button>
          </div>
        ))}
      </div>
    </NoticesContext>
  );
}

/** @throws Error outside of NoticesProvider: a fault of ours, not of a person */
export function useNotices(): Notices {
  const notices = useContext(NoticesContext);
  if (notices === null) throw new Error('useNotices needs NoticesProvider around it');
  return notices;
}

/** What went well before is old news when something else went well; nothing is said twice. */
function staysBeside(old: Notice, added: Omit<Notice, 'id'>): boolean {
  return old.text !== added.text && !(old.kind === 'done' && added.kind === 'done');
}
