import { traceKeys } from '../../../../components/traces/trace-commands';
import styles from './log.module.css';

/** What keys and fingers do, in sight of whoever looks for it. */
export function KeysHelp() {
  return (
    <details className={styles.help} open>
      <summary>Keys and fingers</summary>
      <dl className={styles.keys}>
        {traceKeys.map(({ shown, does }) => (
          <div key={shown}>
            <dt>
              <kbd>{shown}</kbd>
            </dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
      <p className="soft small">
        Keys work once the traces have the focus: press on them, or reach them with Tab. Drag to move, pinch
        or turn the wheel to zoom, tap to put the cursor, tap twice to zoom in.
      </p>
    </details>
  );
}
