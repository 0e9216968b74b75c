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
  /** Of its newest version, whose number this is. */
  readonly analysis: LogAnalysis;
  readonly version: number;
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
      versions: {
        orderBy: { number: 'desc' },
        take: 1,
        select: { number: true, analysis: true, options: true },
      },
      tuningSession: { select: { air: true, visit: { select: { id: true, car: true } } } },
    },
  });
  if (log === null) throw new DomainError('not-found', 'this workshop has no such log');
  const {
    tuningSession,
    versions: [newest],
    ...row
  } = log;
  if (newest === undefined) throw new Error(`log ${log.id} has no version`);
  const { id: visitId, car } = tuningSession.visit;
  // Written by the analysis itself, so it has its shape.
  const analysis = newest.analysis as unknown as LogAnalysis;
  const recorded = newest.options as LogOptions;
  // A log analysed before its options were recorded was read by what the book knew of the car.
  const options = recorded.settings ? recorded : logOptionsOfCar(car, tuningSession.air);
  return {
    ...row,
    analysis,
    version: newest.number,
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
