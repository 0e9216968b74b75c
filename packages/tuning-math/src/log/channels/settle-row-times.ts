import type { LogNotice } from '../log-notice.js';
import { LogError } from '../log-error.js';
import type { LogOptions } from '../log-options.js';
import type { LogChannel } from '../log-samples.js';
import { mendTime, type MendedTime } from '../reading/mend-time.js';
import { parseCell } from '../reading/parse-cell.js';
import type { ScannedLog } from './scanned-log.js';
import { columnFacts } from './column-facts.js';
import { describeColumn } from './describe-column.js';
import { settleTime } from './settle-time.js';

/** Times of the rows that are kept. */
export interface RowTimes {
  readonly timeS: Float64Array;
  /** What was taken off the logged time, so that a clock or a date does not make huge figures. */
  readonly timeOriginS: number;
  readonly keep: Uint32Array | null;
  readonly channel: LogChannel | null;
  readonly notices: readonly LogNotice[];
}

const MAX_RATE_HZ = 100_000;

/**
 * Time of each row in seconds, rising: from the time column, or from the known rate where there is none.
 *
 * @throws LogError `no-time` where neither is there; `setting-out-of-range` for a rate that is none
 */
export function settleRowTimes(log: ScannedLog, options: LogOptions): RowTimes {
  const claim = log.claims.find((candidate) => candidate.quantity === 'time');
  if (claim === undefined) return timesByRate(log.columns.rowCount, options);
  const raw = log.columns.takeFirst();
  const isClock = log.layout.sampleRows.some((cells) => {
    return (
      parseCell(cells[claim.column] ?? '', log.layout.decimalMarks[claim.column] ?? '.').kind === 'clock'
    );
  });
  const scale = settleTime(raw, claim.unit, isClock);
  const facts = columnFacts(raw);
  if (facts.sampleCount === 0) throw noTime(`the time column "${claim.header}" holds no times`);
  const timeOriginS = toSeconds(raw, scale.secondsPerUnit);
  const mended = mendTime(raw, isClock);
  return {
    timeS: mended.timeS,
    timeOriginS,
    keep: mended.keep,
    channel: describeColumn(claim, facts, {
      unit: scale.unit,
      certain: scale.certain || claim.byRecipe,
      rowCount: raw.length,
    }),
    notices: [...mendNotices(mended), ...(scale.certain ? [] : [unsure(claim.header, scale.unit)])],
  };
}

function timesByRate(rowCount: number, options: LogOptions): RowTimes {
  const rateHz = options.recipe?.sampleRateHz ?? options.sampleRateHz ?? null;
  if (rateHz === null) throw noTime('the log has no time column');
  if (!(rateHz > 0 && rateHz <= MAX_RATE_HZ)) {
    throw new LogError(
      'setting-out-of-range',
      `a sample rate of ${rateHz} Hz makes no sense`,
      `give a rate above 0, up to ${MAX_RATE_HZ} Hz`,
    );
  }
  return {
    timeS: Float64Array.from({ length: rowCount }, (_, row) => row / rateHz),
    timeOriginS: 0,
    keep: null,
    channel: null,
    notices: [
      { code: 'time-from-rate', text: `no time column: rows are taken to come ${rateHz} times a second` },
    ],
  };
}

const LATEST_STOPWATCH_S = 7200;
/** No drive lasts three years: a time so far off is garbled. */
const LONGEST_LOG_S = 1e8;

/**
 * Logged times to seconds, in place. A stopwatch stays as logged; a time of day or a date counts from the
 * first row, rounded to microseconds, since the difference of large times carries digits that neither had.
 *
 * @returns what was taken off
 */
function toSeconds(raw: Float64Array, secondsPerUnit: number): number {
  const first = (raw.find((time) => !Number.isNaN(time)) ?? 0) * secondsPerUnit;
  const originS = Math.abs(first) <= LATEST_STOPWATCH_S ? 0 : first;
  for (let row = 0; row < raw.length; row += 1) {
    const timeS = (raw[row] as number) * secondsPerUnit - originS;
    raw[row] = Math.abs(timeS) > LONGEST_LOG_S ? NaN : Math.round(timeS * 1e6) / 1e6;
  }
  return originS;
}

function noTime(text: string): LogError {
  return new LogError(
    'no-time',
    text,
    'say in the channel recipe which column is the time, or how many rows come each second',
  );
}

function unsure(header: string, unit: string): LogNotice {
  return {
    code: 'time-unit-assumed',
    text: `column "${header}" is taken to be in ${unit}: check that the pulls last as long as they did, or say its unit in the channel recipe`,
  };
}

function mendNotices(mended: MendedTime): LogNotice[] {
  const notices: LogNotice[] = [];
  if (mended.untimedRows > 0) {
    notices.push({
      code: 'rows-without-time',
      text: `${mended.untimedRows} rows without a sound time were left out`,
    });
  }
  if (mended.repeatedRows > 0) {
    notices.push({
      code: 'repeated-times',
      text: `${mended.repeatedRows} rows that repeat a time were left out`,
    });
  }
  if (mended.restarts > 0) {
    notices.push({
      code: 'log-restarted',
      text: `the clock falls back ${mended.restarts} times: the parts are kept apart`,
    });
  }
  return notices;
}
