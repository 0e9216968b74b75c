'use client';

import { useId, type ReactNode } from 'react';
import styles from './search-head.module.css';

interface SearchHeadProps {
  readonly title: string;
  readonly label: string;
  readonly hint: string;
  readonly text: string;
  readonly onText: (text: string) => void;
  readonly children?: ReactNode;
}

/** Head of a list: its name, its search, the one thing to do. */
export function SearchHead({ title, label, hint, text, onText, children }: SearchHeadProps) {
  const id = useId();
  return (
    <header className={styles.head}>
      <h1>{title}</h1>
      <label className="unseen" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        type="search"
        placeholder={hint}
        value={text}
        onChange={(event) => onText(event.target.value)}
      />
      <span className="grow" />
      {children}
    </header>
  );
}
