/** A code for programs and a plain sentence for people. */
export interface LogNotice {
  readonly code: string;
  readonly text: string;
}
