import styles from './field.module.css';

interface FieldErrorProps {
  /** For the `aria-describedby` of the field. */
  readonly id: string;
  readonly error: string | undefined;
}

/** What is wrong with a field and what would be right, below it; nothing where nothing is wrong. */
export function FieldError({ id, error }: FieldErrorProps) {
  return error === undefined ? null : (
    <p id={id} className={styles.error}>
      <span aria-hidden="true">▲ </span>
      {error}
    </p>
  );
}
