import type { ControllerNew } from '@pullbook/contracts';
import type { APIRequestContext } from 'playwright-core';
import { changeRecord } from './change-record.js';

export interface VisitOnTest {
  readonly visitId: string;
  readonly carId: string;
  readonly sessionId: string;
  readonly presetId: string;
  readonly plate: string;
}

const goal = { targetKpa: 120, toleranceKpa: 4, ceilingKpa: 131 };

/** What a visit may be without, in the order of the work. */
export type LeftOut = 'controller' | 'goal' | 'session' | 'readiness';

/**
 * A car of the test's own, taken in, with controller, agreed goal and passed readiness: ready for its first pull.
 *
 * @param kind what its controller has other than an open loop with duty alone
 * @param leftOut what was not done yet; without a session its id is empty
 */
export async function visitOnTest(
  api: APIRequestContext,
  plate: string,
  kind: Partial<ControllerNew> = {},
  leftOut: readonly LeftOut[] = [],
): Promise<VisitOnTest> {
  const isDone = (step: LeftOut) => !leftOut.includes(step);
  const ask = async <T>(method: 'POST' | 'PATCH' | 'PUT', path: string, data: object, revision?: number) => {
    const headers = { ...(revision === undefined ? {} : { 'if-match': `"${revision}"` }) };
    const answer = await api.fetch(`/api/v1${path}`, { method, data, headers });
    if (!answer.ok()) throw new Error(`${method} ${path}: ${answer.status()} ${await answer.text()}`);
    return (await answer.json()) as T;
  };
  const taken = await ask<{ carId: string; visitId: string; presetIds: string[] }>('POST', '/intakes', {
    customer: { name: `Customer of ${plate}`, phone: '0100 555 0100' },
    car: { plate, model: 'Estate, 2.0 turbo' },
    visit: { stage: 'arrived' },
    wantedPresets: [{ name: 'everyday', targetKpa: goal.targetKpa }],
  });
  const presetId = taken.presetIds[0] ?? '';
  const { carId, visitId } = taken;
  if (isDone('controller')) {
    const controller = await ask<{ id: string }>('POST', '/controllers', controllerFor(plate, kind));
    await changeRecord(api, `/cars/${carId}`, { controllerId: controller.id });
  }
  if (isDone('goal')) await changeRecord(api, `/presets/${presetId}`, { ...goal, reason: 'Agreed' });
  if (!isDone('session')) return { visitId, carId, sessionId: '', presetId, plate };
  const session = await ask<{ id: string; revision: number; readiness: { items: { key: string }[] } }>(
    'POST',
    `/visits/${visitId}/tuning-sessions`,
    { placeKind: 'closed-course', place: 'Course', driver: 'Ines Dorv', passenger: 'Marek Tolva' },
  );
  const answers = session.readiness.items.map(({ key }) => ({ key, ok: true }));
  const readiness = { items: answers, overBoostCutKpa: 140 };
  if (isDone('readiness')) {
    await ask('PUT', `/tuning-sessions/${session.id}/readiness-check`, readiness, session.revision);
  }
  return { visitId, carId, sessionId: session.id, presetId, plate };
}

const controllerFor = (plate: string, kind: Partial<ControllerNew>): ControllerNew => ({
  name: `Six slots for ${plate}`,
  presetSlots: 6,
  hasTimedOverride: false,
  loop: 'open',
  dutyPct: { min: 0, max: 100, step: 1 },
  holdPct: null,
  correction: null,
  note: '',
  ...kind,
});
