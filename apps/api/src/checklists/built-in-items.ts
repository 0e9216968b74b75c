import type { BuiltInKey } from '@pullbook/contracts';

/** A built-in item in plain words, and why no workshop can do without it. */
export interface BuiltInItem {
  readonly text: string;
  readonly reason: string;
}

/** The checklist that closes a visit as it comes; all must be done. Common practice, no source. */
export const builtInItems: Readonly<Record<BuiltInKey, BuiltInItem>> = {
  'presets-stored-in-controller': {
    text: 'Are the presets below stored in the controller, and read back from it?',
    reason: 'What the pulls proved holds only for what the controller really stores.',
  },
  'over-boost-cut-back-in-place': {
    text: 'Is the over-boost cut back at the level that the car is to keep?',
    reason: 'The cut is what saves the engine when a line comes off.',
  },
  'lines-and-clamps-seen': {
    text: 'Have all control lines, hoses and clamps been looked at after the last pull?',
    reason: 'A control line that slips off lets boost climb without limit.',
  },
  'no-fault-lamps': {
    text: 'Are no fault lamps lit and no fault codes stored?',
    reason: 'Behind a stored fault, knock or mixture may go unwatched.',
  },
  'fluids-and-leaks-seen': {
    text: 'Have oil, coolant and fuel been checked, and is nothing leaking?',
    reason: 'Leaking oil or fuel can set a car on fire.',
  },
  'road-equipment-as-it-came': {
    text: 'Is all equipment for the road, exhaust treatment too, fitted as the car came?',
    reason: 'The car leaves on public roads, where the law asks for it.',
  },
  'customer-told-how-to-use-it': {
    text: 'Has the customer been told, or will be, how to use each preset with care?',
    reason: 'Whoever drives must know what a preset does before using full boost.',
  },
};

/** The built-in item of this key, or null for one of the workshop's own. */
export function findBuiltInItem(key: string): BuiltInItem | null {
  const items: Readonly<Record<string, BuiltInItem>> = builtInItems;
  return Object.hasOwn(items, key) ? (items[key] ?? null) : null;
}
