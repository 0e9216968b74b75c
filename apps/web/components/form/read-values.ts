import type { Units } from '@pullbook/contracts';
import { NotANumberTextError, parseNumber, parsePressure, parseTemperature } from '@pullbook/tuning-math';
import { sayIssue, type Issue } from './say-issue';
import type { Faults, Values } from './use-draft';

/** A schema of `@pullbook/contracts`, as far as checking a form needs it. */
export interface FormContract<T> {
  safeParse: (
    value: unknown,
  ) => { success: true; data: T } | { success: false; error: { issues: readonly Issue[] } };
}

interface Reading {
  readonly text: (name: string) => string;
  readonly textOrNull: (name: string) => string | null;
  readonly numberOrNull: (name: string) => number | null;
  /** kPa, from a figure in the person's unit. */
  readonly kpaOrNull: (name: string) => number | null;
  /** °C, from a figure on the person's scale. */
  readonly celsiusOrNull: (name: string) => number | null;
  /** RFC 3339 instant, from a local date and time. */
  readonly instantOrNull: (name: string) => string | null;
}

export type ReadResult<T> = { readonly data: T } | { readonly faults: Faults };

/**
 * Turns typed text into what the contract wants, or says field by field what is wrong.
 *
 * @param values text by field name; the names are paths in the contract
 * @param units in which pressures and temperatures were typed
 * @param contract what the server will ask for
 * @param build makes the candidate out of the readings
 */
export function readValues<T>(
  values: Values,
  units: Units,
  contract: FormContract<T>,
  build: (read: Reading) => unknown,
): ReadResult<T> {
  const faults: Record<string, string> = {};
  const candidate = build(readingOf(values, units, faults));
  const parsed = contract.safeParse(candidate);
  if (!parsed.success) {
    for (const issue of parsed.error.issues.flatMap(likelyIssues)) {
      const name = issue.path.map(String).join('.');
      faults[name] ??= sayIssue(issue, units);
    }
  }
  if (parsed.success && Object.keys(faults).length === 0) return { data: parsed.data };
  return { faults };
}

function readingOf(values: Values, units: Units, faults: Record<string, string>): Reading {
  const text = (name: string) => (values[name] ?? '').trim();
  const textOrNull = (name: string) => (text(name) === '' ? null : text(name));
  const parsed = (name: string, parse: (typed: string) => number): number | null => {
    const typed = text(name);
    if (typed === '') return null;
    try {
      return parse(typed);
    } catch (error) {
      faults[name] = sayNumberFault(error, typed);
      return null;
    }
  };
  return {
    text,
    textOrNull,
    numberOrNull: (name) => parsed(name, parseNumber),
    kpaOrNull: (name) => parsed(name, (typed) => toMilli(parsePressure(typed, units.pressure))),
    celsiusOrNull: (name) => parsed(name, (typed) => toMilli(parseTemperature(typed, units.temperature))),
    instantOrNull: (name) => {
      const typed = textOrNull(name);
      return typed === null ? null : new Date(typed).toISOString();
    },
  };
}

/** Of a record that is either named by id or written out, the complaints about the way that was taken. */
function likelyIssues(issue: Issue): readonly Issue[] {
  const ways = issue.errors ?? [];
  const way = ways.find((one) => one.every((inner) => inner.code !== 'unrecognized_keys')) ?? ways[0];
  if (way === undefined) return [issue];
  return way.flatMap((inner) => likelyIssues({ ...inner, path: [...issue.path, ...inner.path] }));
}

/** Three decimals: a pascal or a millikelvin is finer than any gauge, and hides binary dust of conversions. */
function toMilli(value: number): number {
  return Math.round(value * 1000) / 1000;
}

function sayNumberFault(error: unknown, typed: string): string {
  if (error instanceof NotANumberTextError)
    return `“${typed}” is not a number. Digits and one decimal point.`;
  return error instanceof Error ? error.message : `“${typed}” was not understood.`;
}
