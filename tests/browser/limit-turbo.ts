import type { APIRequestContext } from 'playwright-core';
import type { VisitOnTest } from './visit-on-test.js';

/** Sets what the turbo bears. Below the over-boost cut, it takes the passed readiness check away. */
export async function limitTurbo(
  api: APIRequestContext,
  { carId }: VisitOnTest,
  turboKpa: number | null,
): Promise<void> {
  const answer = await api.get(`/api/v1/cars/${carId}`);
  const car = (await answer.json()) as { revision: number; limits: object };
  const changed = await api.patch(`/api/v1/cars/${carId}`, {
    data: { limits: { ...car.limits, turboKpa } },
    headers: { 'if-match': `"${car.revision}"` },
  });
  if (!changed.ok()) throw new Error(`turbo limit: ${changed.status()} ${await changed.text()}`);
}
