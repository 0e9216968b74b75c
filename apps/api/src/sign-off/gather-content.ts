import { PressureUnit, TemperatureUnit } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import type { z } from 'zod';
import type { Actor } from '../plumbing/actor.js';
import type { OpenVisit } from '../tuning-sessions/hold-open-visit.js';
import { loadSessions } from '../tuning-sessions/load-session.js';
import { presentSession } from '../tuning-sessions/present-session.js';
import type { SealedContent, SealedPull } from './sealed-content.js';

type Signed = Pick<
  SealedContent,
  'presets' | 'items' | 'checklistRevision' | 'signedName' | 'signedBy' | 'signedAt'
>;

/** Gathers all that a sign-off covers: workshop, car, sessions, the covered presets and every pull of them. */
export async function gatherContent(
  tx: WorkshopTransaction,
  actor: Actor,
  visit: OpenVisit,
  signed: Signed,
): Promise<SealedContent> {
  const workshop = await tx.workshop.findUniqueOrThrow({ where: { id: actor.workshopId } });
  const car = await tx.car.findFirstOrThrow({ where: { id: visit.carId } });
  const sessions = await loadSessions(tx, { visitId: visit.id });
  return {
    form: 'pullbook sign-off 1',
    workshop: {
      id: workshop.id,
      name: workshop.name,
      units: {
        pressure: PressureUnit.parse(workshop.pressureUnit),
        temperature: TemperatureUnit.parse(workshop.temperatureUnit),
      },
    },
    visit: { id: visit.id, number: visit.number },
    car: { id: car.id, plate: car.plate, model: car.model, vin: car.vin },
    tuningSessions: sessions.map(presentSession),
    pulls: await gatherPulls(
      tx,
      visit.id,
      signed.presets.map(({ presetId }) => presetId),
    ),
    ...signed,
  };
}

async function gatherPulls(
  tx: WorkshopTransaction,
  visitId: string,
  presetIds: string[],
): Promise<z.infer<typeof SealedPull>[]> {
  const rows = await tx.pull.findMany({
    where: { visitId, presetId: { in: presetIds } },
    orderBy: [{ presetId: 'asc' }, { number: 'asc' }],
    include: { log: { select: { sha256: true } } },
  });
  return rows.map((row) => ({
    id: row.id,
    presetId: row.presetId,
    presetRevision: row.presetRevision,
    tuningSessionId: row.tuningSessionId,
    number: row.number,
    dutyPct: row.dutyPct,
    holdPct: row.holdPct,
    gear: row.gear,
    peakKpa: row.peakKpa,
    heatSoaked: row.heatSoaked,
    usable: row.usable,
    source: row.source,
    logSha256: row.log?.sha256 ?? null,
    voidReason: row.voidReason,
    recordedBy: row.recordedBy,
    recordedAt: row.recordedAt.toISOString(),
  }));
}
