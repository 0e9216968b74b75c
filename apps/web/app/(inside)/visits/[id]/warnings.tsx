import type { Reason } from '@pullbook/contracts';
import { useUnits } from '../../../../components/units/use-units';
import styles from './visit.module.css';

/** What to mind about a pull, each on a line of its own. */
export function Warnings({ warnings }: Readonly<{ warnings: readonly Reason[] }>) {
  const units = useUnits();
  return warnings.map((warning) => (
    <span key={warning.code} className={styles.warning}>
      <span aria-hidden="true">▲ </span>
      {units.sayReason(warning)}
    </span>
  ));
}
