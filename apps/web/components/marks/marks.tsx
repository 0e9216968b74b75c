import type { ReactNode } from 'react';
import styles from './marks.module.css';

/** A car's plate, as on the car: framed. */
export function Plate({ children }: Readonly<{ children: string }>) {
  return <span className={styles.plate}>{children}</span>;
}

/** A state or a fact in a frame; the shape in front tells it without colour. */
export function Tag({ shape, children }: Readonly<{ shape?: string; children: ReactNode }>) {
  return (
    <span className={styles.tag}>
      {shape === undefined ? null : <span aria-hidden="true">{shape}</span>}
      {children}
    </span>
  );
}

/** Something to mind before acting on. */
export function Mind({ title, children }: Readonly<{ title?: string; children: ReactNode }>) {
  return (
    <div className={styles.mind} role="note">
      {title === undefined ? null : <p className={styles.mindTitle}>{title}</p>}
      {children}
    </div>
  );
}

/** Grey lines where content will stand, on first load. */
export function Skeleton({ lines = 3, label = 'Loading' }: Readonly<{ lines?: number; label?: string }>) {
  return (
    <div className={styles.skeleton} role="status" aria-label={label}>
      {Array.from({ length: lines }, (_, index) => (
        <span key={index} style={{ width: `${92 - ((index * 23) % 47)}%` }} />
      ))}
    </div>
  );
}

/** An empty place that says what to do first. */
export function Empty({ title, children }: Readonly<{ title: string; children?: ReactNode }>) {
  return (
    <div className={styles.empty}>
      <p className={styles.emptyTitle}>{title}</p>
      {children}
    </div>
  );
}
