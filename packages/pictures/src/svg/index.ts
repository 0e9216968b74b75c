export { pictureCss } from './picture-css.js';
export { renderSvg } from './render-svg.js';
export { shapeClass } from './shape-class.js';
