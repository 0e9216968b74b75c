'use client';

import type { PresetForecast } from '@pullbook/contracts';
import { formatNumber } from '@pullbook/tuning-math';
import { conditionNames } from './say-conditions';
import styles from './outlook.module.css';

const statusWords = {
  unknown: '? unknown: these pulls do not tell',
  'none-seen': '– none worth naming',
  seen: '● seen',
} as const;

/** What each condition does to the peak, as far as the pulls tell. */
export function EffectsTable({ effects }: Readonly<{ effects: PresetForecast['effects'] }>) {
  return (
    <div className="scroll" tabIndex={0} role="region" aria-label="Effects of conditions">
      <table className={styles.effects}>
        <thead>
          <tr>
            <th scope="col">Condition</th>
            <th scope="col">Effect on the peak</th>
            <th scope="col" className="n">
              For each
            </th>
            <th scope="col" className="n">
              % of peak
            </th>
          </tr>
        </thead>
        <tbody>
          {effects.map(({ condition, status, effectPct, uncertaintyPct, unit }) => (
            <tr key={condition}>
              <td>{conditionNames[condition]}</td>
              <td>{statusWords[status]}</td>
              <td className="n">{unit}</td>
              <td className="n">
                {status === 'unknown'
                  ? '–'
                  : `${formatNumber(effectPct, 1)} ± ${formatNumber(uncertaintyPct, 1)}`}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
