'use client';

import { useLayoutEffect, useRef, useState, type PointerEvent } from 'react';
import { drawOverview } from '../../../../components/traces/draw-overview';
import { sizeCanvas } from '../../../../components/traces/paint-traces';
import { keepInside, widthOf } from '../../../../components/traces/time-window';
import { readTheme, watchTheme, type TraceTheme } from '../../../../components/traces/trace-theme';
import { boundsOf } from '../../../../components/traces/trace-state';
import type { TraceView } from '../../../../components/traces/trace-view';
import styles from './log.module.css';

const HEIGHT = 44;

/** The whole log as one strip: where one is in it. Press or drag to go elsewhere; keys and buttons do the same. */
export function OverviewStrip({ view }: Readonly<{ view: TraceView }>) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [theme, setTheme] = useState<TraceTheme | null>(null);
  useLayoutEffect(() => {
    const place = canvas.current?.parentElement ?? null;
    if (place === null) return undefined;
    const look = () => setTheme(readTheme(place));
    look();
    return watchTheme(look);
  }, []);
  useLayoutEffect(() => {
    const sheet = canvas.current;
    const context = sheet?.getContext('2d', { alpha: false }) ?? null;
    if (sheet === null || context === null || theme === null) return undefined;
    return view.addDraw(({ state }) => {
      const width = sheet.clientWidth;
      const scale = window.devicePixelRatio;
      sizeCanvas(sheet, width * scale, HEIGHT * scale);
      context.setTransform(scale, 0, 0, scale, 0, 0);
      const { index, reader } = view;
      drawOverview({ context, index, reader, theme, width, height: HEIGHT, window: state.window });
    });
  }, [view, theme]);
  const go = (event: PointerEvent<HTMLCanvasElement>) => {
    if (event.buttons === 0) return;
    const box = event.currentTarget.getBoundingClientRect();
    const { index, state } = view;
    const middleS = index.fromS + ((event.clientX - box.left) / box.width) * (index.toS - index.fromS);
    const half = widthOf(state.window) / 2;
    const window = keepInside({ fromS: middleS - half, toS: middleS + half }, boundsOf(index, state));
    view.change({ window });
  };
  return (
    <canvas
      ref={canvas}
      className={styles.overview}
      aria-hidden="true"
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        go(event);
      }}
      onPointerMove={go}
    />
  );
}
