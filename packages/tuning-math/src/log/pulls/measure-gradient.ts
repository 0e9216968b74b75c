import { lineThrough } from './measure-settled.js';
import type { PullData } from './pull-data.js';

const STANDARD_GRAVITY = 9.80665;
const KMH_PER_MPS = 3.6;
const LEAST_SAMPLES = 5;

/**
 * Gradient of the road during a pull, %: from altitude over distance, else from how much a
 * longitudinal accelerometer shows beyond the change of speed. null where neither is logged.
 *
 * Source: kinematics; an accelerometer shows dv/dt + g sin θ.
 */
export function measureGradient(data: PullData): number | null {
  const road = data.undriven.values.length > 0 ? data.undriven : data.road;
  if (road.values.length < LEAST_SAMPLES) return null;
  const meanMps = road.values.reduce((sum, kmh) => sum + kmh, 0) / road.values.length / KMH_PER_MPS;
  const altitude = data.channel('altitude');
  if (altitude.values.length >= LEAST_SAMPLES && meanMps > 1) {
    const line = lineThrough(altitude);
    return (100 * (line(1) - line(0))) / meanMps;
  }
  const acceleration = data.channel('acceleration');
  if (acceleration.values.length < LEAST_SAMPLES) return null;
  const speed = lineThrough(road);
  const meanShown = acceleration.values.reduce((sum, value) => sum + value, 0) / acceleration.values.length;
  const sine = (meanShown - (speed(1) - speed(0)) / KMH_PER_MPS) / STANDARD_GRAVITY;
  return Math.abs(sine) < 0.5 ? (100 * sine) / Math.sqrt(1 - sine * sine) : null;
}
