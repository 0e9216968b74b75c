import { DEVELOPMENT_RISES } from './development-shapes.js';
import { JUDGEMENT_RISES } from './judgement-shapes.js';
import type { RiseDraw } from './rise-draw.js';
import type { ResponseShape } from './shape-car.js';

/** One kind of car, how it is drawn, and how common it is among practice cars. */
export interface CatalogueEntry {
  readonly shape: ResponseShape;
  readonly rises: readonly RiseDraw[];
  readonly share: number;
}

/** Shares of the cars that no duty suits, and of those that fail on the way. */
const SPECIAL_SHARES: readonly [ResponseShape, number][] = [
  [{ name: 'unreachable', kind: 'out-of-reach' }, 0.08],
  [{ name: 'floor over target', kind: 'floor-over-target' }, 0.03],
  [{ name: 'soaring fault', kind: 'soaring-fault' }, 0.05],
  [{ name: 'falling fault', kind: 'falling-fault' }, 0.06],
];

/** The kinds of car that the advice is judged on. */
export const JUDGEMENT_SHAPES: readonly CatalogueEntry[] = catalogue(JUDGEMENT_RISES);

/** The kinds of car that it was made with. */
export const DEVELOPMENT_SHAPES: readonly CatalogueEntry[] = catalogue(DEVELOPMENT_RISES);

function catalogue(rises: Readonly<Record<string, RiseDraw>>): CatalogueEntry[] {
  const all = Object.values(rises);
  const healthyShare = 1 - SPECIAL_SHARES.reduce((sum, [, share]) => sum + share, 0);
  const healthy = Object.entries(rises).map(([name, rise]): CatalogueEntry => ({
    shape: { name, kind: 'healthy' },
    rises: [rise],
    share: healthyShare / all.length,
  }));
  return [...healthy, ...SPECIAL_SHARES.map(([shape, share]) => ({ shape, rises: all, share }))];
}
