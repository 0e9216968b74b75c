'use client';

import { useEffect, useId, useLayoutEffect, useRef, useState, type RefObject } from 'react';
import { describeCursor, describeTraces } from '../../../../components/traces/describe-traces';
import { paintTraces } from '../../../../components/traces/paint-traces';
import { readTheme, watchTheme, type TraceTheme } from '../../../../components/traces/trace-theme';
import { commandOfKey, runCommand } from '../../../../components/traces/trace-commands';
import { boundsOf } from '../../../../components/traces/trace-state';
import type { TraceView } from '../../../../components/traces/trace-view';
import { useUnits } from '../../../../components/units/use-units';
import { useGestures, type TracePlace } from './use-gestures';
import { useTraceSight } from './use-trace-view';
import styles from './log.module.css';

interface TraceCanvasProps {
  readonly view: TraceView;
  readonly place: RefObject<HTMLDivElement | null>;
}

/** What stands above and below the traces on a wide screen. */
const ABOVE_PX = 300;
const LEAST_ROOM_PX = 420;
const NARROW_PX = 620;

/** The traces themselves: drawn in frames, moved by keys, wheel and fingers. To a screen reader it is the cursor. */
export function TraceCanvas({ view, place }: TraceCanvasProps) {
  const units = useUnits();
  const { pressure, temperature } = units;
  const canvas = useRef<HTMLCanvasElement>(null);
  const where = useRef<TracePlace>({ left: 0, right: 1 });
  const [theme, setTheme] = useState<TraceTheme | null>(null);
  const described = useId();
  useLayoutEffect(() => {
    const element = place.current;
    if (element === null) return undefined;
    const look = () => setTheme(readTheme(element));
    look();
    return watchTheme(look);
  }, [place]);
  useLayoutEffect(() => {
    const [element, sheet] = [place.current, canvas.current];
    if (element === null || sheet === null || theme === null) return undefined;
    const draw = view.addDraw((sight) => {
      const width = Math.floor(element.clientWidth);
      if (width < 40) return;
      const scale = window.devicePixelRatio;
      const person = { pressure, temperature };
      const roomPx = width < NARROW_PX ? 0 : Math.max(LEAST_ROOM_PX, window.innerHeight - ABOVE_PX);
      const layout = paintTraces(sheet, { view, sight, theme, units: person, width, scale, roomPx });
      if (layout === null) return;
      where.current = layout;
      sheet.style.height = `${layout.height}px`;
    });
    const observer = new ResizeObserver(view.refresh);
    observer.observe(element);
    void document.fonts.ready.then(view.refresh);
    return () => {
      draw();
      observer.disconnect();
    };
  }, [view, theme, place, pressure, temperature]);
  useGestures(view, place, where);
  useEffect(() => {
    if (document.activeElement === document.body) place.current?.focus({ preventScroll: true });
  }, [place]);
  const { state, isWaiting } = useTraceSight(view);
  const { all } = boundsOf(view.index, state);
  return (
    <>
      <div
        ref={place}
        className={styles.place}
        role="slider"
        tabIndex={0}
        aria-label="Cursor in the traces"
        aria-describedby={described}
        aria-valuemin={all.fromS}
        aria-valuemax={all.toS}
        aria-valuenow={state.cursorS}
        aria-valuetext={describeCursor(view.index, view.reader, state, { pressure, temperature })}
        aria-busy={isWaiting}
        data-testid="traces"
        onKeyDown={(event) => {
          if (event.ctrlKey || event.metaKey || event.altKey) return;
          const command = commandOfKey(event.key, event.shiftKey);
          if (command === null) return;
          event.preventDefault();
          const { index, reader } = view;
          const widthPx = where.current.right - where.current.left;
          view.change(runCommand(command, { index, reader, state: view.state, widthPx }));
        }}
      >
        <canvas ref={canvas} className={styles.canvas} aria-hidden="true" />
      </div>
      <figcaption id={described} className="unseen">
        {describeTraces(view.index, state)}
      </figcaption>
    </>
  );
}
