'use client';

import type { TraceIndex } from '@pullbook/contracts';
import { useRef } from 'react';
import { HelpRow } from '../../../../components/help/help-row';
import { FiguresTable } from './figures-table';
import { KeysHelp } from './keys-help';
import { OverviewStrip } from './overview-strip';
import { PullPicker } from './pull-picker';
import { Readout } from './readout';
import { TraceCanvas } from './trace-canvas';
import { TraceTools } from './trace-tools';
import { useTraceSight, useTraceView } from './use-trace-view';
import styles from './log.module.css';

interface TraceDeskProps {
  readonly index: TraceIndex;
  readonly asked: number | null;
}

/** Traces, what to do with them, and the figures at the cursor. */
export function TraceDesk({ index, asked }: TraceDeskProps) {
  const view = useTraceView(index, asked);
  const { state, hasFailed } = useTraceSight(view);
  const place = useRef<HTMLDivElement>(null);
  return (
    <div className={styles.desk}>
      <div className={styles.left}>
        <PullPicker view={view} />
        <TraceTools view={view} place={place} />
        {hasFailed ? (
          <p role="alert" className={styles.failed}>
            <span aria-hidden="true">▲ </span>Some samples did not come; coarser ones stand in. Trying again.
          </p>
        ) : null}
        <figure className={styles.figure}>
          {state.mode === 'log' ? <OverviewStrip view={view} /> : null}
          <TraceCanvas view={view} place={place} />
        </figure>
        <KeysHelp />
        <FiguresTable view={view} />
        <HelpRow words={['peak', 'settled_boost', 'overshoot', 'rise_time', 'onset', 'hunting']} />
      </div>
      <Readout view={view} />
    </div>
  );
}
