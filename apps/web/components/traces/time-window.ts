/** A stretch of time that is looked at, seconds. */
export interface TimeWindow {
  readonly fromS: number;
  readonly toS: number;
}

export const widthOf = ({ fromS, toS }: TimeWindow): number => toS - fromS;

/** How far one can look: never beyond `all`, never closer than `leastS`. */
export interface WindowBounds {
  readonly all: TimeWindow;
  readonly leastS: number;
}

/** The window of at most the same width that lies inside the bounds, as near as may be. */
export function keepInside(window: TimeWindow, { all, leastS }: WindowBounds): TimeWindow {
  const width = Math.min(widthOf(all), Math.max(leastS, widthOf(window)));
  const middle = (window.fromS + window.toS) / 2;
  const fromS = Math.min(Math.max(all.fromS, middle - width / 2), all.toS - width);
  return { fromS, toS: fromS + width };
}

/**
 * Zooms about a moment that stays where it is on the screen.
 *
 * @param factor above 1 shows more, below 1 less
 */
export function zoomWindow(
  window: TimeWindow,
  factor: number,
  aroundS: number,
  bounds: WindowBounds,
): TimeWindow {
  const width = Math.min(widthOf(bounds.all), Math.max(bounds.leastS, widthOf(window) * factor));
  const share = (aroundS - window.fromS) / widthOf(window);
  const fromS = aroundS - share * width;
  return keepInside({ fromS, toS: fromS + width }, bounds);
}

/** Moves the window by so many seconds, up to the end. */
export function moveWindow(window: TimeWindow, byS: number, bounds: WindowBounds): TimeWindow {
  return keepInside({ fromS: window.fromS + byS, toS: window.toS + byS }, bounds);
}

/** Moves the window only as far as is needed for a moment to be seen. */
export function showMoment(window: TimeWindow, timeS: number, bounds: WindowBounds): TimeWindow {
  const room = widthOf(window) * 0.05;
  if (timeS < window.fromS + room) return moveWindow(window, timeS - room - window.fromS, bounds);
  if (timeS > window.toS - room) return moveWindow(window, timeS + room - window.toS, bounds);
  return window;
}
