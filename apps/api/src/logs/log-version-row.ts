import type { Prisma } from '@pullbook/database';
import type { Actor } from '../plumbing/actor.js';
import type { AnalysedLog } from './analyse-file.js';

/** Which version of which log, and why there is one. */
export interface VersionOf {
  readonly logId: string;
  readonly number: number;
  readonly recipeId: string | null;
  readonly reason: string;
}

/** A version of a log as it is written. */
export function logVersionRow(
  actor: Actor,
  analysed: AnalysedLog,
  of: VersionOf,
): Prisma.LogVersionUncheckedCreateInput {
  const { analysis, traces, options } = analysed;
  return {
    ...of,
    codeVersion: analysis.provenance.codeVersion,
    options: plain(options),
    analysis: plain(analysis),
    traces: plain(traces),
    madeBy: actor.name,
    madeAt: actor.now(),
  };
}

/** Through JSON, as plain data must be for both databases. */
function plain(data: unknown): Prisma.InputJsonObject {
  return JSON.parse(JSON.stringify(data)) as Prisma.InputJsonObject;
}
