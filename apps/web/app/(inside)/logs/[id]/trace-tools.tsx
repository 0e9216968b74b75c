'use client';

import type { TraceIndex } from '@pullbook/contracts';
import type { RefObject } from 'react';
import { Button } from '../../../../components/button/button';
import { filteredChannel } from '../../../../components/traces/lanes-of';
import { runCommand, type TraceCommand } from '../../../../components/traces/trace-commands';
import {
  windowOfCompared,
  windowOfPull,
  type Alignment,
  type TraceMode,
} from '../../../../components/traces/trace-state';
import type { TraceView } from '../../../../components/traces/trace-view';
import { SaveMenu } from './save-menu';
import { useTraceSight } from './use-trace-view';
import styles from './log.module.css';

interface TraceToolsProps {
  readonly view: TraceView;
  readonly place: RefObject<HTMLDivElement | null>;
}

const alignments: readonly (readonly [Alignment, string])[] = [
  ['full-load', 'where full load begins'],
  ['target', 'where 90 % of target is reached'],
];

/** Everything that can be done with the traces, as buttons. */
export function TraceTools({ view, place }: TraceToolsProps) {
  const { state, onsets } = useTraceSight(view);
  const { index, reader } = view;
  const run = (command: TraceCommand) => () =>
    view.change(runCommand(command, { index, reader, state: view.state, widthPx: 1000 }));
  const isLog = state.mode === 'log';
  const missing = [...onsets].filter(([, onset]) => onset === null).map(([pull]) => pull + 1);
  const bySettled = [...onsets].some(([, onset]) => onset?.basis === 'settled');
  return (
    <div className={styles.tools} role="group" aria-label="Traces">
      <div className={styles.choice}>
        <button type="button" aria-pressed={isLog} onClick={() => enter(view, 'log')}>
          Along the log
        </button>
        <button
          type="button"
          aria-pressed={!isLog}
          disabled={index.pulls.length === 0}
          onClick={() => enter(view, 'compare')}
        >
          Over each other
        </button>
      </div>
      {isLog ? (
        <div className={styles.pair}>
          <Button
            onClick={run('previous-pull')}
            disabled={index.pulls.length === 0}
            aria-label="Previous pull"
          >
            <span aria-hidden="true">‹</span> Pull
          </Button>
          <Button onClick={run('next-pull')} disabled={index.pulls.length === 0} aria-label="Next pull">
            Pull <span aria-hidden="true">›</span>
          </Button>
        </div>
      ) : (
        <label className={styles.alignment}>
          Laid{' '}
          <select
            value={state.alignment}
            onChange={(event) => {
              const alignment = event.target.value as Alignment;
              view.change({ alignment, window: windowOfCompared(index, { ...state, alignment }) });
            }}
          >
            {alignments.map(([value, text]) => (
              <option key={value} value={value}>
                {text}
              </option>
            ))}
          </select>
        </label>
      )}
      <div className={styles.pair}>
        <Button onClick={run('zoom-in')} aria-label="Zoom in">
          <span aria-hidden="true">+</span>
        </Button>
        <Button onClick={run('zoom-out')} aria-label="Zoom out">
          <span aria-hidden="true">−</span>
        </Button>
        <Button onClick={run('whole')}>{isLog ? 'Whole log' : 'Whole pulls'}</Button>
      </div>
      <Button
        aria-pressed={state.fitsHeights}
        onClick={() => view.change({ fitsHeights: !state.fitsHeights })}
      >
        {state.fitsHeights ? '✓ ' : ''}Fit heights
      </Button>
      <SaveMenu view={view} place={place} />
      {isLog || missing.length === 0 ? null : (
        <p className={styles.note}>
          Pull {missing.join(', ')}: that moment was not reached, so it is not shown.
        </p>
      )}
      {!isLog && bySettled ? (
        <p className={styles.note}>
          No target is known for every pull; 90 % of its own settled boost stands in.
        </p>
      ) : null}
    </div>
  );
}

/** Changes between the two ways to look, at what is looked at now. */
function enter(view: TraceView, mode: TraceMode): void {
  const { state, index } = view;
  if (state.mode === mode) return;
  if (mode === 'compare') {
    const pulls = state.pulls.length > 0 ? state.pulls : index.pulls.slice(0, 1).map((pull) => pull.index);
    // One line for each pull is enough: the filtered boost, where both are drawn.
    const filtered = filteredChannel(index);
    const hidesRaw = filtered !== null && state.channels.includes(filtered);
    const channels = hidesRaw ? state.channels.filter((channel) => channel !== 0) : state.channels;
    view.change({ mode, pulls, channels, cursorS: 0, window: windowOfCompared(index, { ...state, pulls }) });
    return;
  }
  const pull = index.pulls[state.pulls[0] ?? 0];
  const window = pull === undefined ? { fromS: index.fromS, toS: index.toS } : windowOfPull(index, pull);
  const channels = withRawBoost(index, state.channels);
  view.change({ mode, window, channels, cursorS: pull?.startS ?? index.fromS });
}

/** Along the log the boost is drawn as logged, too, where the filtered one is drawn over it. */
function withRawBoost(index: TraceIndex, channels: readonly number[]): readonly number[] {
  const filtered = filteredChannel(index);
  const isHidden = filtered !== null && channels.includes(filtered) && !channels.includes(0);
  return isHidden ? [0, ...channels] : channels;
}
