import type { Lane } from './lanes-of';

/** Where everything of the picture stands, px. */
export interface TraceLayout {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly marks: Box;
  readonly lanes: readonly (Box & { readonly lane: Lane })[];
  readonly axis: Box;
  readonly isNarrow: boolean;
}

interface Box {
  readonly top: number;
  readonly bottom: number;
}

const NARROW = 620;
const MARKS = 34;
const AXIS = 30;
const GAP = 10;
/** Heights of the lane of the boost and of the others, px. */
const NATURAL = { wide: [212, 104], narrow: [168, 84] } as const;
const LEAST = [150, 66] as const;
const MOST_GROWTH = 1.5;

/**
 * Lays the lanes out one below the other; that of the boost is the tallest.
 *
 * @param roomPx height that is free on the screen: lanes shrink and grow into it within reason; 0 where it does not matter
 */
export function layOut(lanes: readonly Lane[], width: number, roomPx: number): TraceLayout {
  const isNarrow = width < NARROW;
  const [tall, usual] = isNarrow ? NATURAL.narrow : NATURAL.wide;
  const rest = MARKS + AXIS + GAP * Math.max(0, lanes.length - 1);
  const wanted = lanes.reduce((sum, lane) => sum + (lane.hasBoost ? tall : usual), 0);
  const share = roomPx === 0 || wanted === 0 ? 1 : Math.min(MOST_GROWTH, (roomPx - rest) / wanted);
  let top = MARKS;
  const placed = lanes.map((lane) => {
    const height = Math.round(share * (lane.hasBoost ? tall : usual));
    const box = { lane, top, bottom: top + Math.max(height, lane.hasBoost ? LEAST[0] : LEAST[1]) };
    top = box.bottom + GAP;
    return box;
  });
  return {
    width,
    height: top - GAP + AXIS,
    left: isNarrow ? 46 : 56,
    right: isNarrow ? width - 8 : width - 172,
    marks: { top: 0, bottom: MARKS },
    lanes: placed,
    axis: { top: top - GAP, bottom: top - GAP + AXIS },
    isNarrow,
  };
}
