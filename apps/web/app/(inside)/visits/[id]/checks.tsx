import { CheckField } from '../../../../components/field/check-field';
import styles from './visit.module.css';

interface Ticks {
  readonly heatSoaked: string;
  readonly overrideOff: string;
}

interface ChecksProps {
  readonly draft: { readonly values: Ticks; readonly set: (changes: Partial<Ticks>) => void };
  readonly isOverride: boolean;
}

/** What is ticked of a pull: driven hot, and with the timed override on. */
export function Checks({ draft, isOverride }: ChecksProps) {
  return (
    <div className={styles.checks}>
      {isOverride ? (
        <CheckField
          label="Timed override was on"
          checked={draft.values.overrideOff !== 'yes'}
          onChange={(isOn) => draft.set({ overrideOff: isOn ? '' : 'yes' })}
        />
      ) : null}
      <CheckField
        label="Heat-soaked: driven hot, straight after others"
        checked={draft.values.heatSoaked === 'yes'}
        onChange={(isHot) => draft.set({ heatSoaked: isHot ? 'yes' : '' })}
      />
    </div>
  );
}
