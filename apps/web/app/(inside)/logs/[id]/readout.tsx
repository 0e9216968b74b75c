'use client';

import { writeReading } from '../../../../components/traces/describe-traces';
import { lanesOf } from '../../../../components/traces/lanes-of';
import { lineLook, type LineLook } from '../../../../components/traces/line-look';
import { unitOfLane } from '../../../../components/traces/scene';
import { momentsOf, type TraceSight, type TraceView } from '../../../../components/traces/trace-view';
import { useUnits } from '../../../../components/units/use-units';
import { LookSample } from './look-sample';
import { pullAt } from './pull-picker';
import { PullVerdict } from './pull-verdict';
import { useTraceSight } from './use-trace-view';
import styles from './log.module.css';

/** All channels at the cursor, as figures; the boxes choose which are drawn. */
export function Readout({ view }: Readonly<{ view: TraceView }>) {
  const sight = useTraceSight(view);
  const { state, onsets } = sight;
  const isLog = state.mode === 'log';
  const known = state.pulls.filter((pull) => (onsets.get(pull) ?? null) !== null);
  const moments = momentsOf(state, onsets);
  const looks = looksOf(view, sight);
  const here = isLog ? pullAt(view.index.pulls, state.cursorS) : null;
  return (
    <section className={`sheet ${styles.readout}`} aria-labelledby="at-cursor">
      <h3 id="at-cursor">
        {isLog ? 'At ' : 'From the common moment '}
        <span className={styles.moment}>{state.cursorS.toFixed(3)} s</span>
      </h3>
      {here === null ? null : <PullVerdict view={view} pull={here} />}
      <div className="scroll" tabIndex={0} role="region" aria-label="Values at the cursor">
        <table>
          <thead>
            <tr>
              <th scope="col">Channel, tick to draw</th>
              {isLog ? (
                <th scope="col" className="n">
                  Value
                </th>
              ) : (
                known.map((pull) => (
                  <th key={pull} scope="col" className="n">
                    <LookSample look={lineLook(state.pulls.indexOf(pull))} />
                    <br />
                    Pull {pull + 1}
                  </th>
                ))
              )}
              {isLog ? <th scope="col">Unit</th> : null}
            </tr>
          </thead>
          <tbody>
            {view.index.channels.map((channel, number) => (
              <ChannelRow
                key={number}
                view={view}
                number={number}
                isDrawn={state.channels.includes(number)}
                moments={moments}
                look={looks.get(number)}
                hasUnitColumn={isLog}
                title={channel.header === null ? 'computed' : `column “${channel.header}”`}
              />
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

interface ChannelRowProps {
  readonly view: TraceView;
  readonly number: number;
  readonly isDrawn: boolean;
  readonly moments: readonly number[];
  readonly look: LineLook | undefined;
  readonly hasUnitColumn: boolean;
  readonly title: string;
}

function ChannelRow({ view, number, isDrawn, moments, look, hasUnitColumn, title }: ChannelRowProps) {
  const { pressure, temperature } = useUnits();
  const person = { pressure, temperature };
  const channel = view.index.channels[number];
  if (channel === undefined) return null;
  const unit = unitOfLane(channel.unit, person).word;
  const toggle = () => {
    const { channels } = view.state;
    const next = isDrawn ? channels.filter((one) => one !== number) : [...channels, number];
    view.change({ channels: next });
  };
  return (
    <tr>
      <th scope="row" title={title}>
        <label className={styles.channel}>
          <input type="checkbox" checked={isDrawn} onChange={toggle} />
          <span>
            {channel.name}
            {hasUnitColumn ? null : <span className="soft small"> {unit}</span>}
          </span>
          {look === undefined ? null : <LookSample look={look} />}
        </label>
      </th>
      {moments.map((timeS, position) => (
        <td key={position} className="n">
          {writeReading(view.reader.readAt(number, timeS, false), channel.unit, person)}
        </td>
      ))}
      {hasUnitColumn ? <td className="soft">{unit}</td> : null}
    </tr>
  );
}

/** How each channel is drawn along the log. */
function looksOf({ index }: TraceView, { state }: TraceSight): ReadonlyMap<number, LineLook> {
  if (state.mode === 'compare') return new Map();
  return new Map(
    lanesOf(index, state).flatMap(({ lines }) => lines.map(({ channel, look }) => [channel, look])),
  );
}
