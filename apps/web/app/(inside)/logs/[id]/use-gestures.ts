import { useEffect, type RefObject } from 'react';
import { moveWindow, widthOf, zoomWindow, type TimeWindow } from '../../../../components/traces/time-window';
import { boundsOf } from '../../../../components/traces/trace-state';
import type { TraceView } from '../../../../components/traces/trace-view';

/** Where the traces lie inside their place, px from its left edge. */
export interface TracePlace {
  readonly left: number;
  readonly right: number;
}

/** A movement shorter than this is a tap. */
const TAP_PX = 5;
const WHEEL_ZOOM = 0.0016;
const PINCH_ZOOM = 0.008;
/** Lines and pages of wheels that do not count in px. */
const WHEEL_UNITS = [1, 16, 240] as const;

interface Hold {
  readonly startWindow: TimeWindow;
  readonly startXs: readonly number[];
  isMoved: boolean;
}

/**
 * One finger or the mouse drags the traces, two fingers pinch, a tap or the resting mouse puts the cursor. The wheel
 * zooms once the traces have the focus, or with Ctrl; otherwise it scrolls the page. Sideways it moves.
 */
export function useGestures(
  view: TraceView,
  place: RefObject<HTMLElement | null>,
  where: RefObject<TracePlace>,
): void {
  useEffect(() => {
    const element = place.current;
    if (element === null) return undefined;
    const hands = new Hands(view, element, where);
    const off = new AbortController();
    const { signal } = off;
    element.addEventListener('pointerdown', hands.down, { signal });
    element.addEventListener('pointermove', hands.move, { signal });
    element.addEventListener('pointerup', hands.up, { signal });
    element.addEventListener('pointercancel', hands.cancel, { signal });
    element.addEventListener('wheel', hands.wheel, { signal, passive: false });
    element.addEventListener('dblclick', hands.twice, { signal });
    return () => off.abort();
  }, [view, place, where]);
}

class Hands {
  readonly #view: TraceView;
  readonly #element: HTMLElement;
  readonly #where: RefObject<TracePlace>;
  readonly #fingers = new Map<number, number>();
  #hold: Hold | null = null;

  constructor(view: TraceView, element: HTMLElement, where: RefObject<TracePlace>) {
    this.#view = view;
    this.#element = element;
    this.#where = where;
  }

  readonly down = (event: PointerEvent): void => {
    if (event.button !== 0) return;
    this.#element.focus({ preventScroll: true });
    this.#element.setPointerCapture(event.pointerId);
    this.#fingers.set(event.pointerId, this.#xOf(event));
    this.#grip(this.#fingers.size > 1);
  };

  readonly move = (event: PointerEvent): void => {
    const x = this.#xOf(event);
    if (!this.#fingers.has(event.pointerId)) {
      if (event.pointerType === 'mouse' && event.buttons === 0) this.#putCursor(x);
      return;
    }
    this.#fingers.set(event.pointerId, x);
    this.#follow();
  };

  readonly up = (event: PointerEvent): void => {
    const isTap = this.#fingers.size === 1 && this.#hold?.isMoved === false;
    this.cancel(event);
    if (isTap) this.#putCursor(this.#xOf(event));
  };

  readonly cancel = (event: PointerEvent): void => {
    if (!this.#fingers.delete(event.pointerId)) return;
    if (this.#fingers.size === 0) this.#hold = null;
    else this.#grip(true);
  };

  readonly wheel = (event: WheelEvent): void => {
    const unit = WHEEL_UNITS[event.deltaMode] ?? 1;
    const sideways = sidewaysOf(event);
    if (sideways === 0 && !event.ctrlKey && document.activeElement !== this.#element) return;
    event.preventDefault();
    const { state, index } = this.#view;
    const bounds = boundsOf(index, state);
    if (sideways !== 0) {
      this.#view.change({ window: moveWindow(state.window, sideways * unit * this.#secondsPerPx(), bounds) });
      return;
    }
    // A pinch on a touchpad comes as a wheel with Ctrl, in small steps.
    const strength = event.ctrlKey && event.deltaMode === 0 ? PINCH_ZOOM : WHEEL_ZOOM;
    const factor = Math.exp(event.deltaY * unit * strength);
    this.#view.change({ window: zoomWindow(state.window, factor, this.#timeAt(this.#xOf(event)), bounds) });
  };

  readonly twice = (event: MouseEvent): void => {
    const { state, index } = this.#view;
    const around = this.#timeAt(this.#xOf(event));
    this.#view.change({ window: zoomWindow(state.window, 1 / 3, around, boundsOf(index, state)) });
  };

  #grip(isMoved: boolean): void {
    const startXs = [...this.#fingers.values()].slice(0, 2);
    this.#hold = { startWindow: this.#view.state.window, startXs, isMoved };
  }

  #follow(): void {
    const hold = this.#hold;
    const [startA, startB] = hold?.startXs ?? [];
    const [nowA, nowB] = [...this.#fingers.values()];
    if (hold === null || startA === undefined || nowA === undefined) return;
    const { startWindow } = hold;
    const { left, right } = this.#where.current;
    const perPx = widthOf(startWindow) / (right - left);
    const bounds = boundsOf(this.#view.index, this.#view.state);
    if (startB === undefined || nowB === undefined) {
      if (!hold.isMoved && Math.abs(nowA - startA) < TAP_PX) return;
      hold.isMoved = true;
      this.#view.change({ window: moveWindow(startWindow, (startA - nowA) * perPx, bounds) });
      return;
    }
    const spread = Math.max(12, Math.abs(startB - startA)) / Math.max(12, Math.abs(nowB - nowA));
    const aroundS = startWindow.fromS + ((startA + startB) / 2 - left) * perPx;
    const zoomed = zoomWindow(startWindow, spread, aroundS, bounds);
    const slidPx = (startA + startB - nowA - nowB) / 2;
    const byS = (slidPx * widthOf(zoomed)) / (right - left);
    this.#view.change({ window: moveWindow(zoomed, byS, bounds) });
  }

  /** On a sample, where it is known. */
  #putCursor(x: number): void {
    const { state, reader, index } = this.#view;
    const { all } = boundsOf(index, state);
    const timeS = Math.min(all.toS, Math.max(all.fromS, this.#timeAt(x)));
    this.#view.change({ cursorS: state.mode === 'log' ? reader.rowTimeNear(timeS, false) : timeS });
  }

  #timeAt(x: number): number {
    return this.#view.state.window.fromS + (x - this.#where.current.left) * this.#secondsPerPx();
  }

  #secondsPerPx(): number {
    const { left, right } = this.#where.current;
    return widthOf(this.#view.state.window) / Math.max(1, right - left);
  }

  #xOf({ clientX }: MouseEvent): number {
    return clientX - this.#element.getBoundingClientRect().left;
  }
}

/** How far a wheel moves sideways; 0 where it rather turns up or down. */
function sidewaysOf({ deltaX, deltaY, shiftKey }: WheelEvent): number {
  if (shiftKey) return deltaX === 0 ? deltaY : deltaX;
  return Math.abs(deltaX) > Math.abs(deltaY) ? deltaX : 0;
}
