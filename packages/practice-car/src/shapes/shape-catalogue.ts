import { DEVELOPMENT_RISES } from './development-shapes.js';
import type { FaultDraw } from './fault-draw.js';
import { JUDGEMENT_FAULTS, JUDGEMENT_RISES } from './judgement/index.js';
import type { RiseDraw } from './rise-draw.js';
import { SEEN_RISES } from './seen-shapes.js';
import type { ResponseShape } from './shape-car.js';

/** One kind of car, how it is drawn, and how common it is among practice cars. */
export interface CatalogueEntry {
  readonly shape: ResponseShape;
  readonly rises: readonly RiseDraw[];
  /** What its fault does; left out: the usual one of its kind, if it has any. */
  readonly fault?: FaultDraw;
  readonly share: number;
}

type Special = Pick<CatalogueEntry, 'shape' | 'fault' | 'share'>;

/** Shares of the cars that no duty suits. */
const UNSUITED: readonly Special[] = [
  { shape: { name: 'unreachable', kind: 'out-of-reach' }, share: 0.08 },
  { shape: { name: 'floor over target', kind: 'floor-over-target' }, share: 0.03 },
];

/** Shares of the cars that fail on the way. */
const USUAL_FAULTS: readonly Special[] = [
  { shape: { name: 'soaring fault', kind: 'soaring-fault' }, share: 0.05 },
  { shape: { name: 'falling fault', kind: 'falling-fault' }, share: 0.06 },
];

/** The kinds of car that the advice is judged on, and nothing else; see `JUDGEMENT_RISES`. */
export const JUDGEMENT_SHAPES: readonly CatalogueEntry[] = catalogue(JUDGEMENT_RISES, [
  ...UNSUITED,
  ...JUDGEMENT_FAULTS.map(({ name, kind, share, draw }) => ({ shape: { name, kind }, fault: draw, share })),
]);

/** The kinds of car that it is made and tuned with. */
export const DEVELOPMENT_SHAPES: readonly CatalogueEntry[] = catalogue(
  { ...DEVELOPMENT_RISES, ...SEEN_RISES },
  [...UNSUITED, ...USUAL_FAULTS],
);

/** Those of the development shapes that it was once judged on. */
export const SEEN_SHAPES: readonly CatalogueEntry[] = catalogue(SEEN_RISES, [...UNSUITED, ...USUAL_FAULTS]);

function catalogue(
  rises: Readonly<Record<string, RiseDraw>>,
  specials: readonly Special[],
): CatalogueEntry[] {
  const all = Object.values(rises);
  const healthyShare = 1 - specials.reduce((sum, { share }) => sum + share, 0);
  const healthy = Object.entries(rises).map(([name, rise]): CatalogueEntry => ({
    shape: { name, kind: 'healthy' },
    rises: [rise],
    share: healthyShare / all.length,
  }));
  return [...healthy, ...specials.map((special) => ({ ...special, rises: all }))];
}
