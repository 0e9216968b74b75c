import type { Page } from 'playwright-core';

/** Times between the frames of a movement, as the browser's own animation frames told them. */
export interface FrameTimes {
  readonly name: string;
  readonly frameCount: number;
  readonly medianMs: number;
  readonly p95Ms: number;
  readonly longestMs: number;
}

interface FrameWindow extends Window {
  benchFrames?: number[];
  benchStop?: () => void;
}

/** Notes every animation frame while something moves. */
export async function measureFrames(
  page: Page,
  name: string,
  move: () => Promise<void>,
): Promise<FrameTimes> {
  await page.evaluate(() => {
    const place = window as FrameWindow;
    const frames: number[] = [];
    let isOn = true;
    // A method keeps its name without the help of a loader, which the page does not have.
    const frameLoop = {
      note(atMs: number): void {
        frames.push(atMs);
        if (isOn) requestAnimationFrame(frameLoop.note);
      },
    };
    requestAnimationFrame(frameLoop.note);
    place.benchFrames = frames;
    place.benchStop = () => {
      isOn = false;
    };
  });
  await move();
  const atMs = await page.evaluate(() => {
    const place = window as FrameWindow;
    place.benchStop?.();
    return place.benchFrames ?? [];
  });
  const gaps = atMs.slice(1).map((at, index) => at - (atMs[index] ?? at));
  gaps.sort((a, b) => a - b);
  const quantile = (share: number): number => gaps[Math.floor(share * (gaps.length - 1))] ?? NaN;
  return {
    name,
    frameCount: gaps.length,
    medianMs: quantile(0.5),
    p95Ms: quantile(0.95),
    longestMs: gaps.at(-1) ?? NaN,
  };
}
