import { Help } from './help';
import type { HelpWord } from './words';
import styles from './help.module.css';

/** The words of a picture or table that have no place of their own beside their figures. */
export function HelpRow({ words }: Readonly<{ words: readonly HelpWord[] }>) {
  return (
    <ul className={styles.row} aria-label="Words explained">
      {words.map((word) => (
        <li key={word}>
          <Help word={word} />
        </li>
      ))}
    </ul>
  );
}
