'use client';

import { pullWarnings } from '@pullbook/next-pull';
import type { PracticeSheet } from '@pullbook/practice-car';
import { Empty } from '../../../../components/marks/marks';
import { useUnits } from '../../../../components/units/use-units';
import { practiceRules } from '../../../../practice/practice-rules';
import type { TakenPull } from '../../../../practice/practice-question';
import bench from '../../visits/[id]/visit.module.css';
import { Warnings } from '../../visits/[id]/warnings';
import { isUsable } from './practice';

interface PracticePullsProps {
  readonly sheet: PracticeSheet;
  readonly pulls: readonly TakenPull[];
  readonly onSetAside: (index: number) => void;
}

/** The pulls of this practice, newest first, each with its verdict. */
export function PracticePulls({ sheet, pulls, onSetAside }: PracticePullsProps) {
  const units = useUnits();
  const rows = pulls.map((pull, index) => ({ pull, index })).reverse();
  return (
    <>
      <h2 id="practice-pulls" className="unseen">
        Pulls
      </h2>
      {pulls.length === 0 ? (
        <Empty title="No pull yet.">
          <p>Start low: set a duty, drive one pull, read its peak.</p>
        </Empty>
      ) : (
        <table className={bench.pulls}>
          <thead>
            <tr>
              <th scope="col">Pull</th>
              <th scope="col" className="n">
                Duty %
              </th>
              <th scope="col" className="n">
                Peak {units.pressureWord}
              </th>
              <th scope="col">Verdict</th>
              <th scope="col">
                <span className="unseen">Set aside</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ pull, index }) => (
              <tr key={index} className={pull.isSetAside ? bench.voided : undefined}>
                <td>{index + 1}</td>
                <td className="n">{pull.duty}</td>
                <td className="n">{units.figure(pull.recordedPeakKpa)}</td>
                <td>
                  {verdictOf(pull)}
                  <Warnings warnings={warningsOf(sheet, pulls, index)} />
                </td>
                <td className={bench.voidCell}>
                  <button
                    type="button"
                    aria-label={`${pull.isSetAside ? 'Count pull' : 'Set aside pull'} ${index + 1}`}
                    onClick={() => onSetAside(index)}
                  >
                    {pull.isSetAside ? 'Count it' : 'Set aside'}
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </>
  );
}

function verdictOf(pull: TakenPull): string {
  if (pull.isSetAside) return 'set aside by you';
  const sound = pull.foundSoundAt === undefined ? '' : '; looked over, sound';
  return `${isUsable(pull) ? 'usable' : 'not usable: the pull ended early'}${sound}`;
}

function warningsOf({ controller, goal }: PracticeSheet, pulls: readonly TakenPull[], index: number) {
  const pull = pulls[index];
  if (pull === undefined) return [];
  const before = pulls.slice(0, index).filter(isUsable);
  const driven = { dutyPct: pull.duty, holdPct: null, peakKpa: pull.recordedPeakKpa };
  return pullWarnings(driven, {
    ceilingKpa: goal.ceilingKpa,
    stepLimit: practiceRules.stepLimit,
    highestDutyPct: Math.max(controller.dutyMin, ...before.map((one) => one.duty)),
    provenDutyPct: null,
    highestHoldPct: null,
  });
}
