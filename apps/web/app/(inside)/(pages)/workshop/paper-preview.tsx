'use client';

import { letterheadOf, type PaperHeader } from '@pullbook/contracts';
import styles from './paper.module.css';

interface PaperPreviewProps {
  readonly name: string;
  readonly header: PaperHeader;
}

/** The first page of a job sheet in small: its head and foot as typed, the rest as grey lines. */
export function PaperPreview({ name, header }: PaperPreviewProps) {
  const head = letterheadOf(name, header);
  return (
    <figure className={styles.preview}>
      <figcaption className="soft small">
        So a page begins and ends, on {header.paper === 'a4' ? 'A4' : 'Letter'}
      </figcaption>
      <div className={`${styles.page} ${header.paper === 'letter' ? styles.letter : ''}`}>
        <p className={styles.name}>{head.name}</p>
        {head.lines.map((line) => (
          <p key={line} className={styles.reach}>
            {line}
          </p>
        ))}
        <p className={styles.title}>Job sheet, visit 231</p>
        <div className={styles.rest} aria-hidden="true">
          {Array.from({ length: 9 }, (_, index) => (
            <span key={index} style={{ width: `${96 - ((index * 29) % 41)}%` }} />
          ))}
        </div>
        <div className={styles.foot}>
          {head.footLines.map((line) => (
            <p key={line}>{line}</p>
          ))}
          <p className={styles.count}>
            <span>visit 231 · KVR 418</span>
            <span>page 1 of 2</span>
          </p>
        </div>
      </div>
    </figure>
  );
}
