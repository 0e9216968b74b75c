import type { Units } from '@pullbook/contracts';
import { formatPressure, formatTemperature } from '@pullbook/tuning-math';
import { sentence } from './sentence';

/** What the contract found wrong, as far as we tell it. */
export interface Issue {
  readonly code?: string | undefined;
  readonly path: readonly PropertyKey[];
  readonly message: string;
  readonly origin?: string | undefined;
  readonly minimum?: number | bigint | undefined;
  readonly maximum?: number | bigint | undefined;
  readonly inclusive?: boolean | undefined;
  readonly format?: string | undefined;
  /** Complaints of each way of a union. */
  readonly errors?: ReadonlyArray<readonly Issue[]> | undefined;
}

/** A contract's complaint in plain words, with its limits in the person's units. */
export function sayIssue(issue: Issue, units: Units): string {
  if (issue.code === 'too_small') return saySmall(issue, units);
  if (issue.code === 'too_big') return sayBig(issue, units);
  if (issue.code === 'invalid_type') return 'Fill this in.';
  if (issue.code === 'invalid_format' && issue.format === 'email') {
    return 'Write an email address, such as name@place.example.';
  }
  return sentence(issue.message);
}

function saySmall(issue: Issue, units: Units): string {
  if (issue.origin === 'string') {
    return Number(issue.minimum) <= 1 ? 'Fill this in.' : `At least ${issue.minimum} characters.`;
  }
  if (issue.origin === 'array') return 'Choose at least one.';
  return `${issue.inclusive === false ? 'Must be above' : 'At least'} ${figure(issue, issue.minimum, units)}.`;
}

function sayBig(issue: Issue, units: Units): string {
  if (issue.origin === 'string') return `At most ${issue.maximum} characters.`;
  return `At most ${figure(issue, issue.maximum, units)}.`;
}

function figure(issue: Issue, limit: number | bigint | undefined, units: Units): string {
  const name = String(issue.path.at(-1) ?? '');
  const value = Number(limit ?? 0);
  if (name.endsWith('Kpa')) return formatPressure(value, units.pressure);
  if (name.endsWith('C')) return formatTemperature(value, units.temperature);
  return String(value);
}
