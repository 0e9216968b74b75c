import styles from './shell.module.css';

/** The first stop of every screen: past everything that stands above its content. */
export function SkipLink() {
  return (
    <a className={styles.skip} href="#content">
      Skip to content
    </a>
  );
}
