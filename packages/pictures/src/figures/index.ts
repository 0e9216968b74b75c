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
