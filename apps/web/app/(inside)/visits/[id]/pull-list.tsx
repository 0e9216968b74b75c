'use client';

import { formatNumber } from '@pullbook/tuning-math';
import Link from 'next/link';
import dynamic from 'next/dynamic';
import { useState } from 'react';
import { Button } from '../../../../components/button/button';
import { HelpRow } from '../../../../components/help/help-row';
import { Empty, Skeleton } from '../../../../components/marks/marks';
import type { SeenPull } from '../../../../offline/pulls-seen';
import { useUnits } from '../../../../components/units/use-units';
import styles from './visit.module.css';

const VoidDialog = dynamic(() => import('./void-dialog').then((part) => part.VoidDialog));

const fewPulls = 5;

interface PullListProps {
  readonly visitId: string;
  readonly pulls: readonly SeenPull[];
  readonly isPending: boolean;
}

/** The pulls of this preset in this visit, newest first, each with its verdict. */
export function PullList({ visitId, pulls, isPending }: PullListProps) {
  const units = useUnits();
  const [showAll, setShowAll] = useState(false);
  const [voiding, setVoiding] = useState<SeenPull | null>(null);
  const newestFirst = [...pulls].reverse();
  const shown = showAll ? newestFirst : newestFirst.slice(0, fewPulls);
  return (
    <>
      <h2 id="pulls" className="unseen">
        Pulls
      </h2>
      {isPending ? <Skeleton lines={3} label="Loading the pulls" /> : null}
      {!isPending && pulls.length === 0 ? (
        <Empty title="No pull on record for this preset.">
          <p>Once a duty is shown above: set it, drive one pull, and type its peak or drop in the log.</p>
        </Empty>
      ) : null}
      {pulls.length === 0 ? null : (
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
              <th scope="col">
                <span className="unseen">Void</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {shown.map((pull) => (
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
                <td className={styles.voidCell}>
                  {pull.voidedAt === null ? (
                    <button
                      type="button"
                      aria-label={`Void pull ${pull.number}`}
                      onClick={() => setVoiding(pull)}
                    >
                      Void
                    </button>
                  ) : null}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <HelpRow words={['duty', 'peak', 'overshoot', 'ceiling', 'gate_hold', 'heat-soaked_pull', 'proven']} />
      {pulls.length > fewPulls ? (
        <Button kind="quiet" onClick={() => setShowAll(!showAll)}>
          {showAll ? `Show the last ${fewPulls} pulls` : `Show all ${pulls.length} pulls`}
        </Button>
      ) : null}
      {voiding === null ? null : (
        <VoidDialog visitId={visitId} pull={voiding} onClose={() => setVoiding(null)} />
      )}
    </>
  );
}

/** Usable or not and why, in words; what to mind beside it. */
function Verdict({ pull }: Readonly<{ pull: SeenPull }>) {
  const units = useUnits();
  if (pull.voidedAt !== null) return <>void: {pull.voidReason}</>;
  const why = pull.reasons.map((reason) => units.say(reason.text)).join('; ');
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
      {pull.warnings.map((warning) => (
        <span key={warning.code} className={styles.warning}>
          <span aria-hidden="true">▲ </span>
          {units.say(warning.text)}
        </span>
      ))}
    </>
  );
}
