/** How a line is told apart from its neighbours: by dashes and width, and by colour beside that. */
export interface LineLook {
  readonly tone: 'ink' | 'petrol' | 'ink-soft';
  readonly dash: readonly number[];
  readonly width: number;
}

const LOOKS: readonly LineLook[] = [
  { tone: 'ink', dash: [], width: 1.9 },
  { tone: 'petrol', dash: [9, 4], width: 2.2 },
  { tone: 'ink-soft', dash: [2, 3], width: 2.2 },
  { tone: 'petrol', dash: [12, 3, 2, 3], width: 1.9 },
  { tone: 'ink', dash: [5, 2.5], width: 1.4 },
  { tone: 'ink-soft', dash: [16, 3, 4, 3], width: 1.6 },
];

/** Boost as it was measured: the heavy line that the figures come from. */
export const filteredLook: LineLook = { tone: 'petrol', dash: [], width: 3 };
/** Boost as it was logged, where the filtered one is drawn over it. */
export const rawLook: LineLook = { tone: 'ink', dash: [], width: 1.1 };

/** Look of the n-th line of a lane, from 0. */
export function lineLook(position: number): LineLook {
  return LOOKS[position % LOOKS.length] ?? { tone: 'ink', dash: [], width: 1.9 };
}
