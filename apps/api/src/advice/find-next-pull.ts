import type { NextPull } from '@pullbook/contracts';
import { nextPullOf, type AdvicePull } from '@pullbook/next-pull';
import type { Actor } from '../plumbing/actor.js';
import { provenDutyBefore } from '../outlook/proven-duty-before.js';
import { findEarlierCars } from './find-earlier-cars.js';
import { loadBenchPreset } from './load-bench-preset.js';
import { missingBeforePull } from './missing-before-pull.js';
import { readAdviceRules } from './read-advice-rules.js';

/**
 * The next pull of a preset in a tuning session, or what is missing before there may be one. It rests on the usable
 * pulls of this visit.
 *
 * @throws DomainError not-found, preset-not-of-this-car
 */
export async function findNextPull(actor: Actor, sessionId: string, presetId: string): Promise<NextPull> {
  const { session, preset } = await loadBenchPreset(actor.db, sessionId, presetId);
  const pulls: AdvicePull[] = await actor.db.pull.findMany({
    where: { visitId: session.visit.id, presetId, voidedAt: null },
    orderBy: { number: 'asc' },
    select: { number: true, dutyPct: true, holdPct: true, peakKpa: true, usable: true, foundSoundAt: true },
  });
  const workshop = await readAdviceRules(actor);
  const { leansOnEarlierCars, ...rules } = workshop;
  const earlierCars = leansOnEarlierCars ? await findEarlierCars(actor.db, preset) : [];
  const { targetKpa, toleranceKpa, ceilingKpa, gateHoldPct } = preset.values;
  const basis = {
    dutyRange: preset.car.controller?.dutyPct ?? null,
    targetKpa,
    toleranceKpa,
    ceilingKpa,
    gateHoldPct,
    provenDutyPct: await provenDutyBefore(actor.db, preset, workshop, session.visit.id),
    baseKpa: preset.car.baseKpa,
    ...(earlierCars.length > 0 ? { earlierCars } : {}),
    rules,
    missing: missingBeforePull(preset, session),
  };
  return nextPullOf(basis, pulls);
}
