import type { LogAnalysis, LogOptions } from '@pullbook/tuning-math';
import { createHash } from 'node:crypto';
import { logOptionsOfCar } from '../logs/log-options-of-car.js';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { TRACE_VERSION } from './trace-file.js';

/** A log of the book with what its traces are made from. */
export interface TracedLog {
  readonly id: string;
  readonly sha256: string;
  readonly fileName: string;
  readonly recordedAt: Date;
  readonly visitId: string;
  readonly carId: string;
  readonly plate: string;
  readonly options: LogOptions;
  readonly analysis: LogAnalysis;
  /** Names all that the traces depend on: another reading of the same bytes has another name. */
  readonly build: string;
}

/**
 * Loads a log without its thinned traces.
 *
 * @throws DomainError not-found
 */
export async function loadTracedLog({ db }: Actor, logId: string): Promise<TracedLog> {
  const log = await db.log.findFirst({
    where: { id: logId },
    select: {
      id: true,
      sha256: true,
      fileName: true,
      recordedAt: true,
      analysis: true,
      tuningSession: { select: { air: true, visit: { select: { id: true, car: true } } } },
    },
  });
  if (log === null) throw new DomainError('not-found', 'this workshop has no such log');
  const { tuningSession, ...row } = log;
  const { id: visitId, car } = tuningSession.visit;
  // Written by the analysis itself, so it has its shape.
  const analysis = row.analysis as unknown as LogAnalysis;
  const options = logOptionsOfCar(car, tuningSession.air);
  return {
    ...row,
    analysis,
    visitId,
    carId: car.id,
    plate: car.plate,
    options,
    build: buildOf(options, analysis),
  };
}

const NAME_LENGTH = 16;

function buildOf(options: LogOptions, { pulls, provenance, channels }: LogAnalysis): string {
  const spans = pulls.map(({ startS, endS }) => [startS, endS]);
  const all = JSON.stringify([TRACE_VERSION, options, spans, provenance, channels]);
  return createHash('sha256').update(all).digest('hex').slice(0, NAME_LENGTH);
}
