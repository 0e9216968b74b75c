'use client';

import { useState } from 'react';
import { CheckField } from '../../../../../../components/field/check-field';
import type { ComparedGroup } from './compared';
import styles from './compare.module.css';

interface CompareTableProps {
  readonly left: string;
  readonly right: string;
  readonly groups: readonly ComparedGroup[];
  readonly note: string | null;
}

/** Both sides in columns, the change in words behind them; what is the same stands back. */
export function CompareTable({ left, right, groups, note }: CompareTableProps) {
  const [onlyChanges, setOnlyChanges] = useState(false);
  const shown = groups
    .map((group) => ({ ...group, lines: group.lines.filter((line) => !onlyChanges || !line.isSame) }))
    .filter(({ lines }) => lines.length > 0);
  const changed = groups.flatMap(({ lines }) => lines).filter(({ isSame }) => !isSame).length;
  return (
    <section className="sheet stack" aria-label="Differences">
      <div className="row">
        <p role="status">
          {changed === 0
            ? 'Nothing is different.'
            : `${changed} ${changed === 1 ? 'thing is' : 'things are'} different.`}
        </p>
        <span className="grow" />
        <CheckField label="Only what is different" checked={onlyChanges} onChange={setOnlyChanges} />
      </div>
      <div className="scroll" tabIndex={0} role="region" aria-label="Comparison">
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">
                <span className="unseen">What</span>
              </th>
              <th scope="col">{left}</th>
              <th scope="col">{right}</th>
              <th scope="col">Change</th>
            </tr>
          </thead>
          {shown.map(({ title, lines }) => (
            <tbody key={title}>
              <tr>
                <th scope="rowgroup" colSpan={4} className={styles.group}>
                  {title}
                </th>
              </tr>
              {lines.map((line) => (
                <tr key={line.what} className={line.isSame ? styles.same : styles.changed}>
                  <th scope="row">{line.what}</th>
                  <td>{line.left}</td>
                  <td>{line.right}</td>
                  <td>
                    {line.isSame ? null : <span aria-hidden="true">◆ </span>}
                    {line.change}
                  </td>
                </tr>
              ))}
            </tbody>
          ))}
        </table>
      </div>
      {note === null ? null : <p className="soft small">{note}</p>}
    </section>
  );
}
