import {
  drawShapeCar,
  type CatalogueEntry,
  type ShapeCar,
  type ShapeConditions,
} from '@pullbook/practice-car';

/** Which cars to draw. */
export interface CarOrder {
  readonly count: number;
  readonly seed: number;
  readonly conditions?: ShapeConditions;
}

/** Cars of a catalogue in its shares, each with a seed of its own. */
export function drawCars(
  catalogue: readonly CatalogueEntry[],
  { count, seed, conditions }: CarOrder,
): ShapeCar[] {
  const cars: ShapeCar[] = [];
  catalogue.forEach((entry, kind) => {
    const ofThisKind = Math.max(Math.round(entry.share * count), 1);
    for (let index = 0; index < ofThisKind; index += 1) {
      const carSeed = seed * 1_000_003 + kind * 50_021 + index;
      cars.push(drawShapeCar({ ...entry, seed: carSeed, ...(conditions ? { conditions } : {}) }));
    }
  });
  return cars;
}
