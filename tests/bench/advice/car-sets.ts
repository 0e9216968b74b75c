import { DEVELOPMENT_SHAPES, JUDGEMENT_SHAPES, type CatalogueEntry } from '@pullbook/practice-car';

/** The sets of practice cars by name. */
export const CAR_SETS = {
  development: DEVELOPMENT_SHAPES,
  judgement: JUDGEMENT_SHAPES,
} satisfies Record<string, readonly CatalogueEntry[]>;

export type CarSet = keyof typeof CAR_SETS;

export function isCarSet(name: string): name is CarSet {
  return name in CAR_SETS;
}
