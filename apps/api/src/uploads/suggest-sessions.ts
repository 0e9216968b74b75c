import type { OpenSession, SessionSuggestion } from '@pullbook/contracts';
import { plateKey } from '../cars/plate-key.js';
import { datesInName } from './dates-in-name.js';

/** What is known of a file that waits. */
export interface FileFacts {
  readonly fileName: string;
  /** When the sender's device last wrote it; null where it did not say. */
  readonly writtenAt: Date | null;
  /** Cars that have logs read by the recipe that fits this file. */
  readonly carsOfRecipe: ReadonlySet<string>;
}

/** Suggestions, likeliest first, and the one that is clearly ahead. */
export interface Suggested {
  readonly suggestions: SessionSuggestion[];
  readonly likelySessionId: string | null;
}

const LEAST_PLATE_LENGTH = 4;
/** A tuning session and the files of it: from a little before it was opened to the end of a long day. */
const EARLY_MS = 30 * 60_000;
const LONG_DAY_MS = 14 * 3600_000;
/** A plate says more than a day, a day more than a logger that several cars share. */
const WEIGHTS = { plate: 8, hours: 3, day: 2, logger: 1 } as const;
/** The logger alone says too little to put a session forward. */
const LEAST_LEAD = 2;

interface Weighed extends SessionSuggestion {
  readonly weight: number;
  readonly startedAt: string;
  readonly carId: string;
}

/**
 * Which open tuning sessions a log may belong to: by the plate in the file's name, a date in it or the hour at which
 * it was written, and the logger. It only suggests; a person assigns. One is put forward where it leads clearly, or
 * where it is the latest of the only car that leads. Weights are common practice, no source.
 */
export function suggestSessions(file: FileFacts, sessions: readonly OpenSession[]): Suggested {
  const weighed = sessions
    .map((session) => weigh(file, session))
    .filter(({ reasons }) => reasons.length > 0)
    .sort((a, b) => b.weight - a.weight || b.startedAt.localeCompare(a.startedAt));
  const suggestions = weighed.map(({ tuningSessionId, reasons }) => ({ tuningSessionId, reasons }));
  return { suggestions, likelySessionId: likelyOf(weighed) };
}

function likelyOf([first, ...others]: readonly Weighed[]): string | null {
  if (first === undefined || first.weight < LEAST_LEAD) return null;
  const isRivalled = others.some(({ carId, weight }) => carId !== first.carId && weight === first.weight);
  return isRivalled ? null : first.tuningSessionId;
}

function weigh(file: FileFacts, session: OpenSession): Weighed {
  const { tuningSessionId, startedAt, carId } = session;
  const found: Array<{ code: keyof typeof WEIGHTS; text: string }> = [];
  if (namesPlate(file.fileName, session.plate))
    found.push({ code: 'plate', text: `the file name holds the plate ${session.plate}` });
  if (isWithinHours(file.writtenAt, startedAt))
    found.push({ code: 'hours', text: 'the file was written while this tuning session ran' });
  else if (isSameDay(file.fileName, startedAt))
    found.push({ code: 'day', text: 'the date in the file name is the day of this tuning session' });
  if (file.carsOfRecipe.has(carId))
    found.push({ code: 'logger', text: 'earlier logs of this car came from the same logger' });
  const weight = found.reduce((sum, { code }) => sum + WEIGHTS[code], 0);
  return { tuningSessionId, startedAt, carId, reasons: found, weight };
}

/** The plate stands by itself: not inside a longer word or number. */
function namesPlate(fileName: string, plate: string): boolean {
  const key = plateKey(plate);
  if (key.length < LEAST_PLATE_LENGTH) return false;
  const words = fileName.split(/[^\p{L}\p{N}]+/u).filter((word) => word !== '');
  return words.some((_, from) =>
    words.some((_word, to) => to >= from && plateKey(words.slice(from, to + 1).join('')) === key),
  );
}

function isWithinHours(writtenAt: Date | null, startedAt: string): boolean {
  if (writtenAt === null) return false;
  const sinceMs = writtenAt.getTime() - Date.parse(startedAt);
  return sinceMs >= -EARLY_MS && sinceMs <= LONG_DAY_MS;
}

/** By the server's calendar, which is the workshop's. */
function isSameDay(fileName: string, startedAt: string): boolean {
  const at = new Date(startedAt);
  return datesInName(fileName).some(
    ({ year, month, day }) =>
      year === at.getFullYear() && month === at.getMonth() + 1 && day === at.getDate(),
  );
}
