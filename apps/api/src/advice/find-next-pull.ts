import type { NextPull } from '@pullbook/contracts';
import { nextPullOf, type AdvicePull } from '@pullbook/next-pull';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { loadPreset, type PresetRecord } from '../presets/load-presets.js';
import { lowestCarLimit } from '../presets/lowest-car-limit.js';
import { loadSession, type SessionRecord } from '../tuning-sessions/load-session.js';
import { readAdviceRules } from './read-advice-rules.js';

/**
 * The next pull of a preset in a tuning session, or what is missing before there may be one. It rests on the usable
 * pulls of this visit.
 *
 * @throws DomainError not-found, preset-not-of-this-car
 */
export async function findNextPull(actor: Actor, sessionId: string, presetId: string): Promise<NextPull> {
  const session = await loadSession(actor.db, sessionId);
  const preset = await loadPreset(actor.db, presetId);
  if (preset.car.id !== session.visit.carId) {
    throw new DomainError('preset-not-of-this-car', `${preset.values.name} is a preset of another car`);
  }
  const pulls: AdvicePull[] = await actor.db.pull.findMany({
    where: { visitId: session.visit.id, presetId, voidedAt: null },
    orderBy: { number: 'asc' },
    select: { number: true, dutyPct: true, peakKpa: true, usable: true },
  });
  const rules = await readAdviceRules(actor);
  const { targetKpa, toleranceKpa, ceilingKpa } = preset.values;
  const basis = {
    dutyRange: preset.car.controller?.dutyPct ?? null,
    targetKpa,
    toleranceKpa,
    ceilingKpa,
    baseKpa: preset.car.baseKpa,
    rules,
    missing: missingBeforePull(preset, session),
  };
  return nextPullOf(basis, pulls);
}

function missingBeforePull({ car, values, isReplaced }: PresetRecord, session: SessionRecord): string[] {
  const lowest = lowestCarLimit(car.limits);
  const { ceilingKpa } = values;
  const isTooHigh = lowest !== null && ceilingKpa !== null && ceilingKpa > lowest.limitKpa;
  return [
    ...(session.visit.isOpen ? [] : ['this visit is closed']),
    ...(isReplaced ? ['a newer preset took the slot of this one'] : []),
    ...(isTooHigh
      ? [`lower the ceiling: it stands above the car's ${lowest.name}, ${lowest.limitKpa} kPa`]
      : []),
    ...(session.readiness.passed ? [] : ['pass the readiness check', ...session.readiness.missing]),
  ];
}
