'use client';

import { Tag } from '../marks/marks';
import { useLineWords } from './use-line-words';
import styles from './shell.module.css';

/** Says only when the line is broken: then the figures are those of an earlier time, and changes wait. */
export function LineState() {
  const words = useLineWords();
  return (
    <span role="status" className={words === null ? undefined : styles.line}>
      {words === null ? null : <Tag shape="◐">{`${words.what} to the server${words.asOf}`}</Tag>}
    </span>
  );
}
