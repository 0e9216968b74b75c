'use client';

import { useState } from 'react';
import { writeReading } from '../../../../components/traces/describe-traces';
import { verdictOf } from '../../../../components/traces/draw-pulls';
import { lineShape } from '../../../../components/traces/line-shape';
import { unitOfLane } from '../../../../components/traces/scene';
import type { TimeWindow } from '../../../../components/traces/time-window';
import type { Reading } from '../../../../components/traces/trace-reader';
import { windowOfPull } from '../../../../components/traces/trace-state';
import type { TraceView } from '../../../../components/traces/trace-view';
import { useUnits } from '../../../../components/units/use-units';
import { useTraceSight } from './use-trace-view';
import styles from './log.module.css';

/** What the picture shows, as tables: the pulls, and how far each channel goes in what is looked at. */
export function FiguresTable({ view }: Readonly<{ view: TraceView }>) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details className={styles.help} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>The same as a table</summary>
      {isOpen ? <Figures view={view} /> : null}
    </details>
  );
}

function Figures({ view }: Readonly<{ view: TraceView }>) {
  const { state } = useTraceSight(view);
  const { pressure, temperature, peak, pressureWord } = useUnits();
  const { index } = view;
  const windows = state.mode === 'log' ? [state.window] : state.pulls.flatMap((pull) => windowOf(view, pull));
  const person = { pressure, temperature };
  return (
    <div className="scroll" tabIndex={0} role="region" aria-label="Figures of the traces">
      <table>
        <caption className={styles.caption}>Pulls of the log</caption>
        <thead>
          <tr>
            <th scope="col">Pull</th>
            <th scope="col" className="n">
              From s
            </th>
            <th scope="col" className="n">
              To s
            </th>
            <th scope="col" className="n">
              Peak {pressureWord}
            </th>
            <th scope="col">Verdict</th>
          </tr>
        </thead>
        <tbody>
          {index.pulls.map((pull) => (
            <tr key={pull.index}>
              <td>{pull.index + 1}</td>
              <td className="n">{pull.startS.toFixed(2)}</td>
              <td className="n">{pull.endS.toFixed(2)}</td>
              <td className="n">{pull.peakKpa === null ? '–' : peak(pull.peakKpa)}</td>
              <td>{verdictOf(pull)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <table>
        <caption className={styles.caption}>
          Lowest to highest in what is seen{state.mode === 'compare' ? ', pull by pull' : ''}
        </caption>
        <tbody>
          {state.channels.map((channel) => {
            const facts = index.channels[channel];
            if (facts === undefined) return null;
            return (
              <tr key={channel}>
                <th scope="row">{facts.name}</th>
                {windows.map((window) => (
                  <td key={window.fromS} className="n">
                    {writeReading(rangeOf(view, channel, window), facts.unit, person)}
                  </td>
                ))}
                <td className="soft">{unitOfLane(facts.unit, person).word}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

function windowOf({ index }: TraceView, number: number): TimeWindow[] {
  const pull = index.pulls[number];
  return pull === undefined ? [] : [windowOfPull(index, pull)];
}

/** Fine enough that the edges of the window are told to a thousandth of its width. */
const COLUMNS = 1000;

function rangeOf({ index, reader }: TraceView, channel: number, window: TimeWindow): Reading | null {
  const shape = lineShape(index, reader, channel, { window, widthPx: COLUMNS });
  if (shape === null) return null;
  let [low, high] = [Infinity, -Infinity];
  const take = (value: number, timeS: number | null) => {
    if (timeS !== null && (timeS < window.fromS || timeS > window.toS)) return;
    if (value < low) low = value;
    if (value > high) high = value;
  };
  if (shape.kind === 'points') shape.values.forEach((value, at) => take(value, shape.timesS[at] ?? null));
  else for (const side of [shape.lows, shape.highs]) side.forEach((value) => take(value, null));
  return Number.isFinite(low) ? { low, high, isExact: false } : { low: NaN, high: NaN, isExact: true };
}
