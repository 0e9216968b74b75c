import { LogAnalysis, PullTrace, type Log } from '@pullbook/contracts';
import { z } from 'zod';

const Traces = z.array(PullTrace);

interface LogRow extends Pick<
  Log,
  'id' | 'tuningSessionId' | 'fileName' | 'byteCount' | 'sha256' | 'analysisVersion'
> {
  readonly analysis: unknown;
  readonly traces: unknown;
  readonly recordedAt: Date;
  readonly pulls: readonly { readonly id: string; readonly logPullIndex: number | null }[];
}

/** A stored log as the API tells it. */
export function presentLog(row: LogRow, alreadyOnRecord = false): Log {
  return {
    id: row.id,
    tuningSessionId: row.tuningSessionId,
    fileName: row.fileName,
    byteCount: row.byteCount,
    sha256: row.sha256,
    analysis: LogAnalysis.parse(row.analysis),
    analysisVersion: row.analysisVersion,
    traces: Traces.parse(row.traces),
    confirmed: row.pulls.flatMap(({ id, logPullIndex }) =>
      logPullIndex === null ? [] : [{ index: logPullIndex, pullId: id }],
    ),
    alreadyOnRecord,
    recordedAt: row.recordedAt.toISOString(),
  };
}
