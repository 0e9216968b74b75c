import type { TraceIndex } from '@pullbook/contracts';
import { useEffect, useState, useSyncExternalStore } from 'react';
import { firstState } from '../../../../components/traces/trace-state';
import { TraceView, type TraceSight } from '../../../../components/traces/trace-view';
import { loadTile } from '../../../../queries/traces/load-tile';

const NARROW_PX = 720;

/** The log on the screen; it lives as long as the screen does. */
export function useTraceView(index: TraceIndex, asked: number | null): TraceView {
  const [view] = useState(() => {
    const isNarrow = window.innerWidth < NARROW_PX;
    return new TraceView(index, loadTile, firstState(index, asked, isNarrow));
  });
  useEffect(() => () => view.stop(), [view]);
  useEffect(() => view.takeIndex(index), [view, index]);
  return view;
}

/** What is looked at now; renders anew in every frame in which that changed. */
export function useTraceSight(view: TraceView): TraceSight {
  return useSyncExternalStore(view.subscribe, view.sight, view.sight);
}
