import { describe, expect, it } from 'vitest';
import { inKpa } from '../figures/test-picture.js';
import type { ShapeRole } from '../figures/shapes.js';
import { layoutPeakStrip } from '../strip/layout-peak-strip.js';
import { pictureCss } from './picture-css.js';
import { renderSvg } from './render-svg.js';
import { shapeClass } from './shape-class.js';

const strip = layoutPeakStrip(
  {
    baseKpa: 62,
    targetKpa: 138,
    toleranceKpa: 4,
    ceilingKpa: 150,
    pulls: [
      { number: 1, peakKpa: 70, isVoid: false },
      { number: 2, peakKpa: 61, isVoid: true },
      { number: 3, peakKpa: 160, isVoid: false },
    ],
    next: { lowKpa: 131, highKpa: 141 },
  },
  { form: 'medium', width: 600 },
  inKpa,
);

describe('renderSvg(picture, className)', () => {
  it('writes an element that names the picture and carries its text alternative', () => {
    const svg = renderSvg(strip, 'on-report');
    expect(svg).toMatch(
      /^<svg class="picture on-report" viewBox="0 0 600 [\d.]+" role="img" aria-label="Boost in kPa/,
    );
    expect(svg.match(/<circle class="picture-void"/g)).toHaveLength(1);
    expect(svg).toContain('>ceiling 150</text>');
  });

  it('escapes every text that comes from outside', () => {
    const hostile = { ...inKpa, unit: `"><script>alert('x')</script>&` };
    const picture = layoutPeakStrip(
      { baseKpa: null, targetKpa: null, toleranceKpa: 1, ceilingKpa: null, pulls: [], next: null },
      { form: 'medium', width: 600 },
      hostile,
    );
    const svg = renderSvg(picture);
    expect(svg).not.toContain('<script');
    expect(svg).toContain('&lt;script&gt;alert(&#39;x&#39;)&lt;/script&gt;&amp;');
  });
});

describe('pictureCss', () => {
  it('gives every shape of a full strip a look', () => {
    const roles = new Set<ShapeRole>(
      strip.shapes.filter((shape) => shape.kind !== 'text').map((shape) => shape.role),
    );
    const without = [...roles].filter((role) => !pictureCss.includes(`.${shapeClass({ role })}{`));
    expect(without).toEqual([]);
    expect(roles.size).toBeGreaterThan(9);
  });
});
