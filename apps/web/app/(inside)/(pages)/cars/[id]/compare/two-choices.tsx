import { ChoiceField } from '../../../../../../components/field/choice-field';
import styles from './compare.module.css';

interface TwoChoicesProps {
  readonly choices: ReadonlyArray<{ readonly value: string; readonly label: string }>;
  readonly left: string;
  readonly right: string;
  readonly onLeft: (value: string) => void;
  readonly onRight: (value: string) => void;
}

/** From which to which. */
export function TwoChoices({ choices, left, right, onLeft, onRight }: TwoChoicesProps) {
  return (
    <div className={styles.sides}>
      <ChoiceField label="From" value={left} onChange={onLeft} choices={choices} />
      <ChoiceField label="To" value={right} onChange={onRight} choices={choices} />
    </div>
  );
}
