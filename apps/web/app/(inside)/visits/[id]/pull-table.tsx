'use client';

import { formatNumber } from '@pullbook/tuning-math';
import Link from 'next/link';
import { useUnits } from '../../../../components/units/use-units';
import type { SeenPull } from '../../../../offline/pulls-seen';
import { SoundMark } from './sound-mark';
import styles from './visit.module.css';
import { Warnings } from './warnings';

interface PullTableProps {
  readonly pulls: readonly SeenPull[];
  /** Left out where no pull can be voided any more. */
  readonly onVoid?: (pull: SeenPull) => void;
}

/** Pulls in the order given, each with its verdict. */
export function PullTable({ pulls, onVoid }: PullTableProps) {
  const units = useUnits();
  return (
    <table className={styles.pulls}>
      <thead>
        <tr>
          <th scope="col">Pull</th>
          <th scope="col" className="n">
            Duty %
          </th>
          <th scope="col" className={`n ${styles.wideOnly}`}>
            Gear
          </th>
          <th scope="col" className="n">
            Peak {units.pressureWord}
          </th>
          <th scope="col" className={`n ${styles.wideOnly}`}>
            Overshoot %
          </th>
          <th scope="col">Verdict</th>
          {onVoid === undefined ? null : (
            <th scope="col">
              <span className="unseen">Void</span>
            </th>
          )}
        </tr>
      </thead>
      <tbody>
        {pulls.map((pull) => (
          <tr key={pull.id} className={pull.voidedAt === null ? undefined : styles.voided}>
            <td>{pull.number}</td>
            <td className="n">{pull.dutyPct}</td>
            <td className={`n ${styles.wideOnly}`}>{pull.gear ?? '–'}</td>
            <td className="n">{units.peak(pull.peakKpa)}</td>
            <td className={`n ${styles.wideOnly}`}>
              {pull.overshootPct === null ? '–' : formatNumber(pull.overshootPct, 1)}
            </td>
            <td>
              <Verdict pull={pull} />
            </td>
            {onVoid === undefined ? null : <VoidCell pull={pull} onVoid={onVoid} />}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface VoidCellProps {
  readonly pull: SeenPull;
  readonly onVoid: (pull: SeenPull) => void;
}

function VoidCell({ pull, onVoid }: VoidCellProps) {
  return (
    <td className={styles.voidCell}>
      {pull.voidedAt === null ? (
        <button type="button" aria-label={`Void pull ${pull.number}`} onClick={() => onVoid(pull)}>
          Void
        </button>
      ) : null}
    </td>
  );
}

/** Usable or not and why, in words; what to mind beside it. */
function Verdict({ pull }: Readonly<{ pull: SeenPull }>) {
  const units = useUnits();
  if (pull.voidedAt !== null) return <>void: {pull.voidReason}</>;
  const why = pull.reasons.map((reason) => units.sayReason(reason)).join('; ');
  const verdict = pull.usable ? 'usable' : `not usable: ${why}`;
  return (
    <>
      {verdict}
      {pull.heatSoaked ? ', heat-soaked' : ''}
      {pull.source !== 'log' ? null : pull.logId === null ? (
        ', from log'
      ) : (
        <>
          , <Link href={`/logs/${pull.logId}?pull=${pull.id}`}>from log</Link>
        </>
      )}
      {pull.unsent === true ? <span className="soft">, not sent yet</span> : null}
      <Warnings warnings={pull.warnings} />
      <SoundMark pull={pull} />
    </>
  );
}
