/** What can be wrong with a log as a whole. */
export type LogErrorCode =
  | 'empty-file'
  | 'not-text'
  | 'no-table'
  | 'no-rows'
  | 'no-pressure-channel'
  | 'no-time'
  | 'several-times'
  | 'recipe-column-missing'
  | 'setting-out-of-range'
  | 'too-many-columns'
  | 'reader-finished';

/**
 * A log that cannot be analysed at all, or a setting that makes no sense. `code` is for programs,
 * `message` is a plain sentence for the person who dropped the file, `hint` says what to do about it.
 */
export class LogError extends Error {
  readonly code: LogErrorCode;
  readonly hint: string;

  constructor(code: LogErrorCode, text: string, hint: string) {
    super(text);
    this.name = 'LogError';
    this.code = code;
    this.hint = hint;
  }
}
