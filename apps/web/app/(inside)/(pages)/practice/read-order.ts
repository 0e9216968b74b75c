import type { PracticeLevel, PracticeOrder } from '@pullbook/practice-car';
import { levels } from './levels';

/** The highest number of a car; a test beside the worker holds it to that of the practice cars themselves. */
export const mostNumber = 9999;

/** Which practice car an address asks for; null where it names none that there is. */
export function readOrder(query: URLSearchParams): PracticeOrder | null {
  const level = levels.find((one) => one.level === query.get('level'))?.level;
  const number = readNumber(query.get('car') ?? '');
  return level === undefined || number === null ? null : { level, number };
}

/** A car's number as typed, or null. */
export function readNumber(text: string): number | null {
  const number = /^\d+$/.test(text.trim()) ? Number(text) : 0;
  return number >= 1 && number <= mostNumber ? number : null;
}

/** The address of a practice car: whoever opens it gets the same one. */
export const addressOf = ({ level, number }: PracticeOrder): string =>
  `/practice?level=${level}&car=${number}`;

/** A car that nobody has chosen. */
export function anyOrder(level: PracticeLevel): PracticeOrder {
  const [word = 0] = crypto.getRandomValues(new Uint32Array(1));
  return { level, number: 1 + (word % mostNumber) };
}
