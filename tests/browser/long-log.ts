/** A long log whose every sample is known: pulls at even distances, at 200 rows a second. */
export const LONG_LOG = { rateHz: 200, cycleS: 100, pullFromS: 40, pullToS: 47 } as const;

const NAMES = ['Boost (kPa)', 'Engine speed (rpm)', 'Throttle (%)'];

/** What the file says in a row, as it is written there: time, boost, engine speed, throttle, then fillers. */
export function cellsOfRow(row: number, channelCount: number): string[] {
  const timeS = row / LONG_LOG.rateHz;
  const phaseS = timeS % LONG_LOG.cycleS;
  const sinceS = phaseS - LONG_LOG.pullFromS;
  const isPull = sinceS >= 0 && phaseS < LONG_LOG.pullToS;
  const wobble = ((row * 7919) % 101) / 101;
  const boost = (isPull ? 130 * (1 - Math.exp(-sinceS / 0.6)) : -45) + wobble;
  const rpm = isPull ? 2000 + 600 * sinceS : 1900 + 100 * Math.sin(timeS);
  const fillers = Array.from({ length: Math.max(0, channelCount - NAMES.length) }, (_, filler) =>
    (60 + 20 * Math.sin(timeS / (3 + filler)) + wobble).toFixed(2),
  );
  return [timeS.toFixed(3), boost.toFixed(2), rpm.toFixed(0), isPull ? '100' : '12', ...fillers];
}

const ROWS_AT_ONCE = 20_000;

/** The whole log as bytes. */
export function longLog(rowCount: number, channelCount: number): Buffer {
  const fillers = Array.from(
    { length: Math.max(0, channelCount - NAMES.length) },
    (_, filler) => `Probe ${filler + 1}`,
  );
  const pieces = [Buffer.from(`${['Time (s)', ...NAMES, ...fillers].join(',')}\r\n`)];
  for (let first = 0; first < rowCount; first += ROWS_AT_ONCE) {
    let text = '';
    for (let row = first; row < Math.min(rowCount, first + ROWS_AT_ONCE); row += 1) {
      text += `${cellsOfRow(row, channelCount).join(',')}\r\n`;
    }
    pieces.push(Buffer.from(text));
  }
  return Buffer.concat(pieces);
}
