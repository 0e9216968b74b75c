import { requireNumber } from '../require-number.js';

/**
 * Torque that a power is at an engine speed.
 *
 * @param powerKw at the crank, 0 or more
 * @param engineSpeedRpm above 0
 * @returns N·m
 * @throws NotFiniteError, OutOfRangeError
 * Source: definition of power, P = 2π n T (ISO 80000-4).
 * @example torqueAtPower(100, 9549.2965855) // 100
 */
export function torqueAtPower(powerKw: number, engineSpeedRpm: number): number {
  requireNumber('torqueAtPower', 'powerKw', powerKw, { min: 0, max: 10_000 });
  requireNumber('torqueAtPower', 'engineSpeedRpm', engineSpeedRpm, { min: 0, max: 20_000, exclusive: true });
  return (powerKw * 1000) / ((2 * Math.PI * engineSpeedRpm) / 60);
}
