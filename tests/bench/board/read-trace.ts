/** What Chromium's own tracing tells of a stretch of time. */
export interface TraceFigures {
  /** Frames that were drawn, and frames that should have been and were not. */
  readonly drawnCount: number;
  readonly droppedCount: number;
  /** Longest of the tasks on the page's main thread. */
  readonly longestTaskMs: number;
  /** From each key to the frame that showed its effect, longest first. */
  readonly interactionsMs: readonly number[];
}

interface TraceEvent {
  readonly name: string;
  readonly dur?: number;
  readonly args?: { readonly data?: { readonly type?: string; readonly duration?: number } };
}

/** Categories that `readTrace` needs. */
export const traceCategories = [
  'devtools.timeline',
  'disabled-by-default-devtools.timeline',
  'devtools.timeline.frame',
  'disabled-by-default-devtools.timeline.frame',
];

/** Reads the trace that `browser.stopTracing` gives back. */
export function readTrace(trace: Buffer): TraceFigures {
  const { traceEvents } = JSON.parse(trace.toString('utf8')) as { traceEvents: readonly TraceEvent[] };
  const count = (name: string): number => traceEvents.filter((event) => event.name === name).length;
  const tasks = traceEvents.filter(({ name }) => name === 'RunTask').map(({ dur }) => (dur ?? 0) / 1000);
  const interactions = traceEvents
    .filter(({ name, args }) => name === 'EventTiming' && args?.data?.type === 'keydown')
    .map(({ args }) => args?.data?.duration ?? 0);
  return {
    drawnCount: count('DrawFrame'),
    droppedCount: count('DroppedFrame'),
    longestTaskMs: tasks.reduce((longest, one) => Math.max(longest, one), 0),
    interactionsMs: interactions.sort((a, b) => b - a),
  };
}
