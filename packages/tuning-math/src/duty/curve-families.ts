/** Raw rise of a response over duty (0 to 100 and somewhat beyond), any unit, never falling. */
export type RawRise = (duty: number) => number;

/** Makes one rise from a point of the unit cube. */
export interface CurveFamily {
  readonly name: string;
  readonly dimensions: number;
  /** Share of the library that it makes up. */
  readonly share: number;
  readonly draw: (point: readonly number[]) => RawRise;
}

/**
 * Unlike ways in which a peak can rise with duty. None of them is 'the' response of a car; together they span
 * what physics and practice show: dead zones, knees, poles of the force balance, saturation, sudden steepness.
 * Ranges are reasoned from the force balance with bleed (peak = base / (1 - share of pressure kept away from the
 * actuator)) and widened; common practice, no source.
 */
export const CURVE_FAMILIES: readonly CurveFamily[] = [
  { name: 'force balance', dimensions: 4, share: 0.2, draw: forceBalance },
  { name: 'sigmoid', dimensions: 3, share: 0.22, draw: sigmoid },
  { name: 'soft knee', dimensions: 4, share: 0.22, draw: softKnee },
  { name: 'levelling off', dimensions: 3, share: 0.1, draw: levellingOff },
  { name: 'power', dimensions: 3, share: 0.1, draw: power },
  { name: 'segments', dimensions: 9, share: 0.07, draw: segments },
  { name: 'two in one', dimensions: 8, share: 0.09, draw: twoInOne },
];

const between = (low: number, high: number, share: number): number => low + (high - low) * share;
const logBetween = (low: number, high: number, share: number): number => low * (high / low) ** share;

/** Smooth max(x, 0) whose corner is `width` wide. */
function softPositive(x: number, width: number): number {
  const z = x / width;
  if (z > 30) return x;
  return width * Math.log1p(Math.exp(z));
}

function forceBalance(point: readonly number[]): RawRise {
  const [a = 0, b = 0, c = 0, d = 0] = point;
  const deadZone = between(0, 50, a * a);
  const pole = between(Math.max(deadZone + 25, 75), 160, b);
  const mostRise = logBetween(1, 30, c);
  const corner = between(0.3, 4, d);
  return (duty) => {
    const kept = softPositive(duty - deadZone, corner) / (pole - deadZone);
    const rise = 1 / Math.max(1 - kept, 0.02) - 1;
    return (rise * mostRise) / (rise ** 3 + mostRise ** 3) ** (1 / 3);
  };
}

function sigmoid(point: readonly number[]): RawRise {
  const [a = 0, b = 0, c = 0] = point;
  const centre = between(10, 110, a);
  const width = logBetween(1.5, 22, b);
  const skew = logBetween(0.4, 2.5, c);
  return (duty) => (1 + Math.exp(-(duty - centre) / width)) ** -skew;
}

function softKnee(point: readonly number[]): RawRise {
  const [a = 0, b = 0, c = 0, d = 0] = point;
  const knee = between(2, 88, a);
  const slopeRatio = logBetween(0.004, 2.5, b);
  const corner = logBetween(0.2, 8, c);
  const bend = between(-0.004, 0.012, d);
  return (duty) => {
    const after = softPositive(duty - knee, corner);
    return slopeRatio * duty + after * (1 + bend * after);
  };
}

function levellingOff(point: readonly number[]): RawRise {
  const [a = 0, b = 0, c = 0] = point;
  const start = between(0, 45, a);
  const reach = logBetween(6, 90, b);
  const corner = between(0.3, 5, c);
  return (duty) => 1 - Math.exp(-softPositive(duty - start, corner) / reach);
}

function power(point: readonly number[]): RawRise {
  const [a = 0, b = 0, c = 0] = point;
  const start = between(-5, 55, a);
  const exponent = logBetween(0.7, 4.5, b);
  const corner = between(0.3, 4, c);
  return (duty) => softPositive(duty - start, corner) ** exponent;
}

/** Four to five straight pieces with slopes that differ by an order of magnitude: no formula at all. */
function segments(point: readonly number[]): RawRise {
  const slopes = point.slice(0, 5).map((share) => logBetween(0.02, 1, share ** 0.8));
  const knots = point
    .slice(5)
    .map((share) => between(3, 105, share))
    .sort((one, other) => one - other);
  return (duty) => {
    let rise = 0;
    let from = 0;
    slopes.forEach((slope, index) => {
      const to = knots[index] ?? Infinity;
      rise += slope * Math.max(Math.min(duty, to) - from, 0);
      from = to;
    });
    return rise;
  };
}

/** A gentle rise and, somewhere on it, a second and steeper one: nothing below warns of it. */
function twoInOne(point: readonly number[]): RawRise {
  const gentle = (point[0] ?? 0) < 0.5 ? power(point.slice(1, 4)) : forceBalance(point.slice(1, 5));
  const steep = sigmoid([point[5] ?? 0, 0.5 * (point[6] ?? 0), 0.5]);
  const most = gentle(100) - gentle(0);
  const share = logBetween(0.15, 3, point[7] ?? 0);
  return (duty) => gentle(duty) + share * most * steep(duty);
}
