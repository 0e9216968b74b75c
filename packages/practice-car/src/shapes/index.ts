export { drawShapeCar, USUAL_CONDITIONS, type ShapeCarOrder } from './draw-shape-car.js';
export * from './drawn-ranges.js';
export { driveShapeCar, type ShapeDrive } from './drive-shape-car.js';
export type { RiseDraw } from './rise-draw.js';
export type {
  MeanPeakKpa,
  ResponseShape,
  ShapeCar,
  ShapeConditions,
  ShapeFault,
  ShapePull,
  ShapeTruth,
} from './shape-car.js';
export { DEVELOPMENT_SHAPES, JUDGEMENT_SHAPES, SEEN_SHAPES, type CatalogueEntry } from './shape-catalogue.js';
export { soakAfter } from './soak-after.js';
