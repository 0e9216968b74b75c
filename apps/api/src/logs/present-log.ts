import { ChannelReading, LogAnalysis, PullTrace, type Log } from '@pullbook/contracts';
import type { LogVersion, WorkshopTransaction } from '@pullbook/database';
import { z } from 'zod';
import { findConfirmed } from './find-confirmed.js';
import type { LogRecord } from './load-log.js';

const Traces = z.array(PullTrace);
const Options = z.object({ recipe: ChannelReading.nullish() });

/** How a log is told: by its newest version, unless another one is asked for. */
interface Telling {
  readonly version?: LogVersion;
  readonly alreadyOnRecord?: boolean;
}

/** A stored log as the API tells it. */
export async function presentLog(
  db: WorkshopTransaction,
  row: LogRecord,
  { version = row.newest, alreadyOnRecord = false }: Telling = {},
): Promise<Log> {
  const analysis = LogAnalysis.parse(version.analysis);
  return {
    id: row.id,
    tuningSessionId: row.tuningSessionId,
    fileName: row.fileName,
    byteCount: row.byteCount,
    sha256: row.sha256,
    version: version.number,
    analysis,
    analysisVersion: version.codeVersion,
    reading: Options.parse(version.options).recipe ?? null,
    recipeId: version.recipeId,
    traces: Traces.parse(version.traces),
    confirmed: await findConfirmed(db, row, { number: version.number, pulls: analysis.pulls }),
    alreadyOnRecord,
    recordedAt: row.recordedAt.toISOString(),
  };
}
