'use client';

import type { TracePull } from '@pullbook/contracts';
import { memo } from 'react';
import { pullMark, verdictOf } from '../../../../components/traces/draw-pulls';
import { lineLook } from '../../../../components/traces/line-look';
import { windowOfCompared, windowOfPull } from '../../../../components/traces/trace-state';
import type { TraceView } from '../../../../components/traces/trace-view';
import { useUnits } from '../../../../components/units/use-units';
import { LookSample } from './look-sample';
import { useTraceSight } from './use-trace-view';
import styles from './log.module.css';

const markShapes = { usable: '●', 'not-usable': '○', 'past-ceiling': '■' } as const;

/** The pulls of the log: go to one, or choose which to lay over each other. */
export function PullPicker({ view }: Readonly<{ view: TraceView }>) {
  const { state } = useTraceSight(view);
  const { index } = view;
  if (index.pulls.length === 0) {
    return <p className="soft">No full-load pull was found in this log; its traces are here all the same.</p>;
  }
  const here = state.mode === 'log' ? pullAt(index.pulls, state.cursorS) : null;
  return (
    <ul className={styles.pullRow} aria-label="Pulls of this log">
      {index.pulls.map((pull) => (
        <li key={pull.index}>
          <PullButton
            view={view}
            pull={pull}
            compares={state.mode === 'compare'}
            position={state.pulls.indexOf(pull.index)}
            isHere={here?.index === pull.index}
          />
        </li>
      ))}
    </ul>
  );
}

interface PullButtonProps {
  readonly view: TraceView;
  readonly pull: TracePull;
  readonly compares: boolean;
  /** Among the compared pulls; -1 where it is not one of them. */
  readonly position: number;
  readonly isHere: boolean;
}

/** Rendered anew only when it changes, since a long log has many. */
const PullButton = memo(function PullButton({ view, pull, compares, position, isHere }: PullButtonProps) {
  const units = useUnits();
  const peak = pull.peakKpa === null ? 'no peak' : `${units.peak(pull.peakKpa)} ${units.pressureWord}`;
  const press = () => {
    if (!compares) {
      view.change({ window: windowOfPull(view.index, pull), cursorS: pull.startS });
      return;
    }
    const { state } = view;
    const pulls =
      position >= 0
        ? state.pulls.filter((one) => one !== pull.index)
        : [...state.pulls, pull.index].sort((a, b) => a - b);
    view.change({ pulls, window: windowOfCompared(view.index, { ...state, pulls }) });
  };
  return (
    <button type="button" aria-pressed={compares ? position >= 0 : isHere} onClick={press}>
      <span className={styles.pullNumber}>
        <span aria-hidden="true" className={styles[pullMark(pull)]}>
          {markShapes[pullMark(pull)]}
        </span>{' '}
        Pull {pull.index + 1} <span className={styles.peak}>{peak}</span>
        {compares && position >= 0 ? <LookSample look={lineLook(position)} /> : null}
      </span>
      <span className="soft small">{verdictOf(pull)}</span>
    </button>
  );
});

/** The pull at a moment, with a second before and behind it. */
export function pullAt(pulls: readonly TracePull[], timeS: number): TracePull | null {
  return pulls.find(({ startS, endS }) => timeS >= startS - 1 && timeS <= endS + 1) ?? null;
}
