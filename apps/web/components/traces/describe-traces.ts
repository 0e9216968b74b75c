import type { TraceIndex } from '@pullbook/contracts';
import { channelUnit, formatNumber, type ChannelBaseUnit } from '@pullbook/tuning-math';
import { verdictOf } from './draw-pulls';
import { pullLabel } from './lanes-of';
import type { PersonUnits } from './scene';
import type { Reading, TraceReader } from './trace-reader';
import type { TraceState } from './trace-state';

/** A reading in the person's unit: '98.2', '97.5 to 98.9' while its samples have not come, '–' where there is none. */
export function writeReading(reading: Reading | null, unit: string, person: PersonUnits): string {
  if (reading === null) return '…';
  if (Number.isNaN(reading.low)) return '–';
  const { scale, offset, fractionDigits } = channelUnit(unit as ChannelBaseUnit, person);
  const write = (value: number): string => formatNumber(value * scale + offset, fractionDigits);
  const [low, high] = [write(reading.low), write(reading.high)];
  return low === high ? low : `${low} to ${high}`;
}

/** What stands in the picture, in a few sentences. */
export function describeTraces(index: TraceIndex, state: TraceState): string {
  const names = state.channels.map((channel) => index.channels[channel]?.name).join(', ');
  if (state.mode === 'compare') {
    const moment = state.alignment === 'full-load' ? 'full load begins' : '90 % of target is first reached';
    const pulls = state.pulls.map((pull) => pullLabel(index, pull)).join('; ');
    return `${names} of ${state.pulls.length} pulls, laid over each other where ${moment}: ${pulls}.`;
  }
  const { fromS, toS } = state.window;
  const pulls = index.pulls.filter((pull) => pull.endS > fromS && pull.startS < toS);
  const told = pulls.map(
    (pull) =>
      `pull ${pull.index + 1} from ${pull.startS.toFixed(2)} to ${pull.endS.toFixed(2)} s, ${verdictOf(pull)}`,
  );
  const seen = told.length === 0 ? 'no pull in sight' : told.slice(0, 6).join('; ');
  return `${names} from ${fromS.toFixed(2)} to ${toS.toFixed(2)} s: ${seen}.`;
}

/** What the cursor stands at, for whoever hears the screen. */
export function describeCursor(
  index: TraceIndex,
  reader: TraceReader,
  state: TraceState,
  person: PersonUnits,
): string {
  const at = `${state.cursorS.toFixed(3)} s`;
  if (state.mode === 'compare') return `${at} from the common moment`;
  const values = state.channels.map((channel) => {
    const facts = index.channels[channel];
    if (facts === undefined) return '';
    const { word } = channelUnit(facts.unit as ChannelBaseUnit, person);
    return `${facts.name} ${writeReading(reader.readAt(channel, state.cursorS, false), facts.unit, person)} ${word}`.trim();
  });
  return `${at}: ${values.join(', ')}`;
}
