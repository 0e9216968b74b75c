import { closedStages, type ReadinessCheck } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { loadCeilingCar } from '../engine/load-ceiling-car.js';
import { DomainError } from '../plumbing/domain-error.js';
import type { CutBounds } from './judge-readiness.js';
import { presentReadiness } from './present-readiness.js';

/** A tuning session of the book with its readiness as it stands now. */
export interface SessionRecord {
  readonly id: string;
  readonly visit: { readonly id: string; readonly carId: string; readonly isOpen: boolean };
  readonly number: number;
  readonly placeKind: string;
  readonly place: string;
  readonly driver: string;
  readonly passenger: string;
  readonly fuel: string;
  readonly air: unknown;
  readonly readiness: ReadinessCheck;
  readonly startedAt: Date;
  readonly revision: number;
}

/** Which sessions to load: by id, or all of a visit. */
type SessionFilter = { readonly id: string } | { readonly visitId: string };

/**
 * Loads tuning sessions in order. The readiness of an open visit is judged anew on limits and ceilings as they are
 * now: a ceiling that was raised too close to the over-boost cut takes the readiness away. A closed visit keeps what was.
 */
export async function loadSessions(db: WorkshopTransaction, where: SessionFilter): Promise<SessionRecord[]> {
  const rows = await db.tuningSession.findMany({
    where,
    orderBy: [{ number: 'asc' }, { id: 'asc' }],
    include: { visit: { select: { id: true, carId: true, stage: true, signOff: { select: { id: true } } } } },
  });
  const carId = rows[0]?.visit.carId;
  const bounds = carId === undefined ? null : await readBounds(db, carId);
  return rows.map(({ visit, ...row }) => {
    const isOpen = visit.signOff === null && !closedStages.includes(visit.stage);
    return {
      ...row,
      visit: { id: visit.id, carId: visit.carId, isOpen },
      readiness: presentReadiness(row, isOpen ? bounds : null),
    };
  });
}

/**
 * One tuning session.
 *
 * @throws DomainError not-found
 */
export async function loadSession(db: WorkshopTransaction, sessionId: string): Promise<SessionRecord> {
  const [session] = await loadSessions(db, { id: sessionId });
  if (session === undefined) throw new DomainError('not-found', 'this workshop has no such tuning session');
  return session;
}

/**
 * What an over-boost cut must stand between: the ceilings of the car's presets and what the car can stand.
 *
 * @throws DomainError not-found
 */
export async function readBounds(db: WorkshopTransaction, carId: string): Promise<CutBounds> {
  const car = await loadCeilingCar(db, carId);
  const presets = await db.preset.findMany({
    where: { carId, replacedAt: null },
    orderBy: [{ slot: 'asc' }, { id: 'asc' }],
    select: {
      revisions: { orderBy: { revision: 'desc' }, take: 1, select: { name: true, ceilingKpa: true } },
    },
  });
  const ceilings = presets.flatMap(({ revisions }) =>
    revisions.flatMap(({ name, ceilingKpa }) => (ceilingKpa === null ? [] : [{ name, ceilingKpa }])),
  );
  return { car, ceilings };
}
