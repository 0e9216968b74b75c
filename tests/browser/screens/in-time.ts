/** Longest wait for a step that sets no limit of its own, ms; on a loaded machine they take some seconds. */
const LONGEST_MS = 60_000;

/**
 * Waits for a step of the browser that sets no limit of its own: opening, closing, resizing, code in the page.
 *
 * @param what it is waited for, for the message
 * @throws Error that says so once the wait has been too long
 */
export async function inTime<T>(what: string, step: Promise<T>, longestMs = LONGEST_MS): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`waited ${longestMs / 1000} s for ${what}`)), longestMs);
  });
  try {
    return await Promise.race([step, late]);
  } finally {
    clearTimeout(timer);
  }
}
