import type { ErrorCode, SettingRange } from '@pullbook/contracts';
import { DomainError } from '../plumbing/domain-error.js';

/** Settings are typed in decimals: a grid of 0.1 must not refuse 0.3. */
const GRID_SLACK = 1e-6;

interface Setting {
  readonly code: ErrorCode;
  readonly field: string;
  /** How people call it: 'duty', 'gate hold', 'correction strength'. */
  readonly name: string;
  readonly value: number;
}

/**
 * Refuses a setting that the controller cannot be set to: outside its range, or between two steps of its grid (which
 * starts at the range's lower end).
 *
 * @throws DomainError with the setting's code, naming its field and what is allowed
 */
export function checkSetting(setting: Setting, range: SettingRange): void {
  const { value } = setting;
  const steps = (value - range.min) / range.step;
  const isInside = value >= range.min - GRID_SLACK && value <= range.max + GRID_SLACK;
  if (isInside && Math.abs(steps - Math.round(steps)) <= GRID_SLACK) return;
  const message = `${setting.name} ${value} cannot be set: this controller takes ${range.min} to ${range.max} in steps of ${range.step}`;
  throw new DomainError(setting.code, message, { errors: [{ field: setting.field, message }] });
}
