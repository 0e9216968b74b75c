export type {
  CircleShape,
  LineShape,
  PathShape,
  Picture,
  PictureTable,
  RectShape,
  Shape,
  ShapeRole,
  TextShape,
} from './shapes.js';
export type { PressureFormat } from './pressure-format.js';
export { spreadLabels } from './spread-labels.js';
export { tidyTicks } from './tidy-ticks.js';
